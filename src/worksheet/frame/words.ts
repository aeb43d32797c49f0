/** What a picture's own data say against the sheet. */

export const setOtherwise = (label: string, asked: string, found: string): string =>
  `${label}: ${asked} set, ${found} in the frame`

/** What the records of a picture are called in messages. */
export const picture = 'picture'
export const cameraRecord = 'camera record'
