import * as words from './words.ts'
/** Why a typed value cannot be read: what, where in the text, and how to fix it. */
export class ReadError extends Error {
  constructor(
    message: string,
    readonly from: number,
    readonly to: number,
    readonly fix?: string,
  ) {
    super(message)
  }
}

/** No quantity is longer; what is pasted by mistake is refused before it is looked at. */
const LONGEST = 1000

/** Refuses a text longer than any quantity. Throws ReadError. */
export function refuseLong(text: string): void {
  if (text.length > LONGEST) throw new ReadError(words.tooLong(LONGEST), LONGEST, text.length)
}

/** A text short enough to quote in a message. */
export const clip = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text)

/** Reads a part of a text; an error in it names its place in the whole. */
export function readPart<T>(typed: string, from: number, to: number, read: (part: string) => T): T {
  try {
    return read(typed.slice(from, to))
  } catch (error) {
    if (error instanceof ReadError)
      throw new ReadError(
        error.message,
        error.from + from,
        error.to + from,
        error.fix && typed.slice(0, from) + error.fix + typed.slice(to),
      )
    throw error
  }
}
