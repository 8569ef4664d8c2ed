import type { Edit, TaskChoice } from '../../shared-core/house/index.ts';

/**
 * What is said of the tasks with what changes of one of them; of a task of which nothing is said any more there is no entry.
 *
 * Example: the day taken from a task of which nothing else is said leaves a list without it.
 */
export function changedTasks(tasks: readonly TaskChoice[], task: string, change: Partial<Omit<TaskChoice, 'task'>>): Extract<Edit, { kind: 'set-tasks' }>['tasks'] {
  const { task: _task, ...before } = tasks.find((choice) => choice.task === task) ?? {};
  const facts = Object.fromEntries(Object.entries({ ...before, ...change }).filter(([, value]) => value !== undefined));
  const others = tasks.filter((choice) => choice.task !== task).map((choice) => ({ ...choice }));
  return Object.keys(facts).length > 0 ? [...others, { task, ...facts }] : others;
}
