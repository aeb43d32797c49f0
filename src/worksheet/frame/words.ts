/** What a picture's own data say against the sheet. */

export const setOtherwise = (label: string, asked: string, found: string): string =>
  `${label}: ${asked} set, ${found} in the frame`
