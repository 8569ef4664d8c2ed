/** Answers to pure questions, by question. */
export interface Memory<Answer> {
  readonly recall: (question: string) => Answer | undefined;
  /** Gives the answer back. */
  readonly remember: (question: string, answer: Answer) => Answer;
}

/**
 * A memory of at most so many answers; the one that was neither given nor asked for longest goes first.
 *
 * Example: of three answers a memory of two forgets the first, or the second where the first was asked for in between.
 */
export function memoryOf<Answer>(most: number): Memory<Answer> {
  const known = new Map<string, Answer>();
  const remember = (question: string, answer: Answer): Answer => {
    known.delete(question);
    known.set(question, answer);
    for (const oldest of known.keys()) {
      if (known.size <= most) break;
      known.delete(oldest);
    }
    return answer;
  };
  return {
    recall(question) {
      const answer = known.get(question);
      return answer === undefined ? undefined : remember(question, answer);
    },
    remember,
  };
}
