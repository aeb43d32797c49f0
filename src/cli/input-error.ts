/** The input cannot be read: what and where, in one line. */
export class InputError extends Error {}
