declare const brand: unique symbol;

/** A value that only its own maker can make, so that a length is never mistaken for a count. */
export type Brand<Value, Name extends string> = Value & { readonly [brand]: Name };
