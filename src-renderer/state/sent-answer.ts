import type { HousePlan, RoomPlan } from '../../shared-core/plan/index.ts';
import type { PlanAnswer } from './answer-plan.ts';

type Given = Extract<PlanAnswer, { readonly kind: 'plan' }>;

/** An answer on its way from the planner to the window: a room that stood in the plan sent before is sent as its place there. */
export type SentAnswer = Exclude<PlanAnswer, Given> | (Omit<Given, 'plan'> & { readonly plan: Omit<HousePlan, 'rooms'> & { readonly rooms: readonly (RoomPlan | number)[] } });

/**
 * Makes answers small for their way: an edit changes few rooms, and copying the others takes as long as planning it.
 *
 * Example: of a plan of three rooms whose second alone is new, the others are sent as 0 and 2.
 */
export function answerSender(): (answer: PlanAnswer) => SentAnswer {
  let before = new Map<RoomPlan, number>();
  return (answer) => {
    if (answer.kind !== 'plan') return answer;
    const rooms = answer.plan.rooms.map((room) => before.get(room) ?? room);
    before = new Map(answer.plan.rooms.map((room, index) => [room, index]));
    return { ...answer, plan: { ...answer.plan, rooms } };
  };
}

/** Makes the answers of one sender whole again, each of them in the order in which they were sent. */
export function answerReceiver(): (sent: SentAnswer) => PlanAnswer {
  let before: readonly RoomPlan[] = [];
  return (sent) => {
    if (sent.kind !== 'plan') return sent;
    before = sent.plan.rooms.map((room) => (typeof room === 'number' ? before[room]! : room));
    return { ...sent, plan: { ...sent.plan, rooms: before } };
  };
}
