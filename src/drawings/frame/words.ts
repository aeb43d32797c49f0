/** The texts of the drawings of what was measured in a picture. */
export const FRAME_DRAWING_WORDS = {
  curve: 'Spatial frequency response',
  frequency: 'Cycles per pixel',
  response: 'Response',
  half: (at: string) => `½ at ${at}`,
  tenth: (at: string) => `⅒ at ${at}`,
  curveDescribed: (half: string, tenth: string, greatest: string) =>
    `The response of the edge over spatial frequency: one half ${half}, one tenth ${tenth}, at most ${greatest}.`,
  reachedAt: (at: string) => `at ${at} cycles per pixel`,
  notReached: 'not reached',
  patches: 'Patches, measured beside their references',
  patchesHead: 'Left measured, right the reference; below, ΔE2000',
  patchesKey: 'Denser hatching: larger, from 1, 2 and 4',
  patchesDescribed: (list: string) => `ΔE2000 of each patch from its reference: ${list}.`,
  patch: (name: string, difference: string) => `${name} ${difference}`,
  picture: 'The picture with its areas',
  areasDescribed: (width: number, height: number, list: string) =>
    `${width} by ${height} pixels; ${list === '' ? 'no area is marked' : list}.`,
  area: (name: string, figure: string) => (figure === '' ? name : `${name} ${figure}`),
} as const
