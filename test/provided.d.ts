import 'vitest';

declare module 'vitest' {
  interface ProvidedContext {
    /** How many random rooms a property of setting out is held to, and how many of those are searched for a start. */
    randomRooms: { readonly rooms: number; readonly searched: number };
    /** Of a long set the part that is run: 1 is all of it. */
    share: number;
  }
}
