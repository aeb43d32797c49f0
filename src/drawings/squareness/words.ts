/** The texts in and below a drawing of a frame that is out of square. */
export const SQUARENESS_WORDS = {
  pixelsUnknown: 'the pixels of the frame are unknown.',
  distanceUnknown: 'the distance of the entrance pupil is unknown.',
  fieldUnknown: 'both sides of the field are unknown.',
  frameTooNarrow: 'the frame is too narrow.',
  tiltUnknown: 'the tilt is unknown.',
  tiltTooLarge: 'the tilt must be below a right angle.',
  besideLens: 'The outline is not drawn: at this tilt part of the field is beside the lens.',
  allowedNotPositive: 'What is allowed is not drawn: it must be a number of pixels above zero.',
  allowedNotReached: 'What is allowed is not drawn: no tilt makes the edges differ by this much.',

  asTilted: 'as the camera is tilted',
  asAllowed: (pixels: string) => `edges differ by ${pixels}, as allowed`,
  square: 'square',
  pixels: (figure: string) => `${figure} px`,
  differ: (pixels: string) => `edges differ by ${pixels}`,
  differAllowed: (pixels: string, allowed: string) => `edges differ by ${pixels}, ${allowed} allowed`,
  exaggerated: (times: string) => `shifts drawn ${times} times as large`,
  edge: (name: string, figure: string) => `${name} edge ${figure}`,
  far: 'far',
  near: 'near',
  edges: ['upper', 'right', 'lower', 'left'],
  corners: ['upper left', 'upper right', 'lower right', 'lower left'],
  separator: ', ',

  alongHeight: (angle: string) => `${angle} along the height of the frame`,
  alongWidth: (angle: string) => `${angle} along its width`,
  introduction: (tilts: string, size: string) =>
    `The outline of a square field as seen by a camera tilted by ${tilts}, in a frame of ${size} px.`,
  edgeShift: (name: string, distance: string | undefined, shift: string) =>
    `${name} edge${distance === undefined ? '' : ` (${distance})`} ${shift}`,
  cornerShift: (name: string, shift: string) => `${name} ${shift}`,
  edgeShifts: (list: string) => `Compared with the square outline: ${list}.`,
  cornerShifts: (list: string) => `The corners are displaced: ${list}.`,
  difference: (pixels: string) => `Opposite edges differ by ${pixels} over the frame.`,
  differenceAllowed: (pixels: string, allowed: string, angle: string | undefined) =>
    `Opposite edges differ by ${pixels} over the frame; ${allowed} is allowed${angle === undefined ? '' : `, reached at ${angle}`}.`,
  exaggeration: (times: string) => `The shifts are drawn ${times} times as large as they are.`,
}
