/** The words of an enlarged drawing, and why one could not be saved as a picture. */
export const pictureWords = {
  close: 'Close',
  cannotDraw: 'this browser cannot draw a picture.',
  tooLarge: 'the picture is too large for this browser.',
  inWords: 'In words',
  saveSvg: 'Save as SVG',
  savePng: 'Save as PNG',
  notSaved: (reason: string): string => `The drawing was not saved: ${reason}`,
}
