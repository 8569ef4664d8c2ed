import { type House, nameCovering, type Room } from '../house/index.ts';
import { addAreas, type Area, areaOf, lengthOf, showArea, showLength, ZERO_AREA } from '../units/index.ts';
import { CAUTION_KINDS, type CautionKind } from './caution-kinds.ts';
import { lastAsbestosYear, LEAD_FEDERAL_AREA, LEAD_LAW_AREA, MOULD_AREA, REACHED_FROM_FLOOR } from './caution-limits.ts';
import { cautionsOf, conducts, isSetOff, isVapourTight, type RoomWork } from './caution-triggers.ts';
import type { Caution } from './prep-plan.ts';
import { COMMON_PRACTICE } from './rule.ts';
import { say, sayList } from '../words/index.ts';

type Said = Pick<Caution, 'words' | 'threshold' | 'isReached' | 'ask' | 'source'>;

/** What a caution in a room is about. */
interface Case {
  readonly house: House;
  readonly room: Room;
  /** How much of the room's surfaces the work that sets it off takes, each surface once; null where that is not known. */
  readonly area: Area | null;
  /** Coverings that come on the surfaces in question. */
  readonly coverings: readonly string[];
  readonly conducting: readonly string[];
}

/** The id of a caution; with its colons it is unlike any id that a house has. */
export function cautionId(room: string, kind: CautionKind): string {
  return `${room}:caution:${kind}`;
}

/**
 * The cautions of a room: one of each kind that any work in it sets off, whoever does that work.
 *
 * Shapes: the area of a caution is what the work that sets it off takes of the room, each surface counted once by the
 * most that is taken of it. Sources stand with each. Example: 6 square feet of old paint scraped fall short of the law's
 * rule, which begins above; a square inch more reaches it.
 */
export function findCautions(works: readonly RoomWork[], house: House, room: Room): readonly Caution[] {
  return CAUTION_KINDS.flatMap((kind): readonly Caution[] => {
    const own = works.filter((work) => cautionsOf(work, house, room).includes(kind));
    if (own.length === 0) return [];
    const parts = own.flatMap(({ rule, parts: all }) => all.filter(({ met }) => isSetOff(kind, met, rule, house, room)));
    const coverings = parts.flatMap(({ met }) => met.coverings);
    const namesOf = (some: typeof coverings) => [...new Set(some.map(({ id }) => nameCovering(house, id)))];
    const said = SAY[kind]({ house, room, area: areaOnce(parts), coverings: namesOf(coverings.filter(isVapourTight)), conducting: namesOf(coverings.filter(conducts)) });
    return [{ id: cautionId(room.id, kind), kind, room: room.id, ...said }];
  });
}

/** Each surface by the most that is taken of it; null where one has no known area. */
function areaOnce(parts: RoomWork['parts']): Area | null {
  if (parts.some(({ met }) => !met.isMeasured)) return null;
  const most = [...Map.groupBy(parts, ({ met }) => met)].map(([, of]) => areaOf(Math.max(...of.map(({ area }) => area))));
  return addAreas(ZERO_AREA, ...most);
}

const SAY: Readonly<Record<CautionKind, (of: Case) => Said>> = {
  'lead-paint': sayLead,
  'asbestos-coating': ({ house }) => ({
    words: say`The textured coating may hold asbestos. It is not sanded, scraped, drilled or broken before a sample was tested; sound, it is left or skimmed over.`,
    ...sayAsbestosYears(house),
    ask: say`Ask a licensed asbestos surveyor for the sample, and a licensed contractor where it has to come off.`,
  }),
  'asbestos-filler': ({ house }) => ({
    words: say`Old fillers and patching compounds may hold asbestos. Have what is filled already tested before it is sanded, scraped or raked out.`,
    ...sayAsbestosYears(house),
    ask: say`Ask a licensed asbestos surveyor.`,
    source: say`16 CFR 1304: patching compounds banned in the US from 1978, which does not clear old stock; years as for textured coatings, from memory`,
  }),
  mould: ({ house, area }) => {
    const isReached = area === null || area > MOULD_AREA;
    return {
      words: say`Mould harms the lungs: gloves, goggles and a P2 or N95 mask, the door shut, the window open. Its cause is put right first; it is never papered or painted over.`,
      threshold: sayThreshold(say`Up to about ${showArea(MOULD_AREA, house.lengths)} a householder takes it on, more is a professional’s.`, house, area, isReached),
      isReached,
      ask: say`Ask a licensed mould remediation contractor where it is more, comes back, or somebody in the house is ill.`,
      source: say`US EPA on mould`,
    };
  },
  mains: ({ conducting }) => ({
    words:
      conducting.length === 0
        ? say`Water and steam carry current: isolate the circuit and prove it dead before walls are wetted or steamed and before plates come off. Foil and metallic papers never go behind plates.`
        : say`Water, steam and metal carry current: isolate the circuit and prove it dead before walls are wetted or steamed and before plates come off. ${sayList(conducting)} conducts: cut it back round every plate, never tuck it behind.`,
    threshold: null,
    isReached: null,
    ask: say`Ask a licensed electrician where a circuit can’t be isolated or a plate is damaged.`,
    source: say`common practice, from memory; local wiring rules come first`,
  }),
  height: ({ house }) => ({
    words: say`The work is reached from a ladder or a trestle: stand it on firm, level ground, a ladder 1 out for every 4 up and 3 ft (0.9 m) above a landing that it leads to, and never lean out.`,
    threshold: say`Ceilings, and walls higher than ${showLength(lengthOf(REACHED_FROM_FLOOR), house.lengths)}: there are such here.`,
    isReached: true,
    ask: say`Ask a licensed scaffolder where a trestle does not reach.`,
    source: say`29 CFR 1926.1053 on ladders, from memory; the height is common practice, no source`,
  }),
  stairs: () => ({
    words: say`Over stairs no ladder stands level: build a platform of boards tied to ladder and steps, or a stair scaffold, and have a second person there. A fall down the stairs is the worst of the house.`,
    threshold: say`A leaning ladder stands 1 out for every 4 up and reaches 3 ft (0.9 m) above the landing.`,
    isReached: null,
    ask: say`Ask a licensed scaffolder for a stair tower.`,
    source: say`29 CFR 1926.1053 on ladders, from memory; the platform is common practice, no source`,
  }),
  'silica-dust': () => ({
    words: say`Dust of fillers and plaster holds silica, which scars the lungs: sand wet or with extraction, wear a P3 or P100 mask, vacuum instead of sweeping.`,
    threshold: say`At most 50 µg/m³ of air over 8 hours, from 25 on action is due (29 CFR 1926.1153). Nobody measures it here: take it as reached where dry sanding has no extraction.`,
    isReached: true,
    ask: say`Ask a licensed industrial hygienist where dust is raised for days.`,
    source: '29 CFR 1926.1153',
  }),
  solvents: () => ({
    words: say`Solvents in primers, stain block and knotting make dizzy and catch fire: windows open, no flame or spark, gloves, used rags laid out flat to dry outside; nobody sleeps in the room before it is aired.`,
    threshold: null,
    isReached: null,
    ask: say`Ask for the safety data sheet, and a licensed professional where the room can’t be aired.`,
    source: COMMON_PRACTICE,
  }),
  'vapour-tight': ({ coverings }) => ({
    words: say`${sayList(coverings)} lets no vapour through. On a damp or cold outside wall it invites mould behind it: dry the wall for good, or choose a covering that breathes.`,
    threshold: null,
    isReached: null,
    ask: say`Ask a licensed surveyor where a wall is cold or was damp.`,
    source: COMMON_PRACTICE,
  }),
};

function sayLead({ house, area }: Case): Said {
  const isReached = area === null || area > LEAD_LAW_AREA;
  const isOverFederal = area === null || area > LEAD_FEDERAL_AREA;
  const here = sayHere(house, area);
  const lines = say`US law has rules for more than ${showArea(LEAD_LAW_AREA, house.lengths)} of paint disturbed in a room (40 CFR 745.83), in housing with federal help for more than ${showArea(LEAD_FEDERAL_AREA, house.lengths)} (24 CFR 35.1350).`;
  const which = isReached ? say`Both are reached.` : isOverFederal ? say`The second alone is reached.` : say`Neither is reached; the caution holds all the same.`;
  const place = house.country === undefined ? [say`Outside the US the law of the country holds instead.`] : house.country === 'US' ? [] : [say`Outside the US, as here (${house.country}), the law of the country holds instead.`];
  return {
    words:
      house.built === undefined
        ? say`It is not known when the house was built, so old paint may hold lead: have it tested or take it for lead. Keep children and pregnant women away, sheet up, damp what is sanded or scraped, no dry power sanding and no flame, clean up wet.`
        : say`In a house of ${house.built} old paint may hold lead: have it tested or take it for lead. Keep children and pregnant women away, sheet up, damp what is sanded or scraped, no dry power sanding and no flame, clean up wet.`,
    threshold: [lines, here, which, ...place].join(' '),
    isReached,
    ask: house.country === 'US' ? say`Ask a licensed lead inspector for a test, and a certified lead-safe renovator.` : say`Ask a licensed lead specialist, and the local authority which rules hold.`,
    source: '40 CFR 745.83; 24 CFR 35.1350(d)',
  };
}

function sayAsbestosYears({ country }: House): Pick<Said, 'threshold' | 'isReached' | 'source'> {
  const last = lastAsbestosYear(country);
  return {
    threshold:
      country === 'US'
        ? say`In the US suspect up to the mid-1980s; here up to ${last}, to be sure. Nothing says that it is later: take it as reached.`
        : say`Suspect up to ${last}, the year of the United Kingdom; other countries have their own. Nothing says that it is later: take it as reached.`,
    isReached: true,
    source: say`years in the US and the United Kingdom, from memory; local rules come first`,
  };
}

function sayThreshold(line: string, house: House, area: Area | null, isReached: boolean): string {
  return `${line} ${sayHere(house, area)} ${isReached ? say`That is reached.` : say`That is not reached.`}`;
}

function sayHere({ lengths }: House, area: Area | null): string {
  return area === null ? say`How much it is here is not known, so it counts as more.` : say`Here it is ${showArea(area, lengths)}.`;
}
