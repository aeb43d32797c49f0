/** A picture or an area that cannot be measured: what is wrong, where, and what to do about it. */
export class FrameError extends Error {}

/** A text out of a file or a list, short enough for one line of a message. */
export const quoted = (text: string): string => `“${text.length > 40 ? `${text.slice(0, 40)}…` : text}”`
