/**
 * Every circle among imports, one for each import that closes it, as `a -> b -> a`.
 *
 * A walk in depth over `[from, to]` pairs: an import that leads back to a file of the path walked closes a circle.
 */
export function findCycles(edges: readonly (readonly [from: string, to: string])[]): readonly string[] {
  const targets = new Map<string, string[]>();
  for (const [from, to] of edges) targets.set(from, [...(targets.get(from) ?? []), to]);
  const done = new Set<string>();
  const cycles = new Set<string>();
  const walk = (file: string, path: readonly string[]): void => {
    const here = path.indexOf(file);
    if (here >= 0) {
      cycles.add([...path.slice(here), file].join(' -> '));
      return;
    }
    if (done.has(file)) return;
    for (const target of targets.get(file) ?? []) walk(target, [...path, file]);
    done.add(file);
  };
  for (const file of targets.keys()) walk(file, []);
  return [...cycles];
}
