import type { Picture } from './picture.ts'

/** Turns and mirrors a picture as the orientation field of Exif and TIFF (1 to 8) says it is to be shown. */
export function orient(picture: Picture, orientation: number): Picture {
  if (!(Number.isInteger(orientation) && orientation >= 2 && orientation <= 8)) return picture
  const { width, height, channels, samples } = picture
  const turned = orientation >= 5
  const [shownWidth, shownHeight] = turned ? [height, width] : [width, height]
  const [left, right, up, down] = [0, (width - 1) * channels, 0, (height - 1) * width * channels]
  const [x, y] = [channels, width * channels]
  // Where the first pixel shown lies, and how far it is to the next along a row and down a column.
  const [first, along, across] = (
    {
      2: [right + up, -x, y],
      3: [right + down, -x, -y],
      4: [left + down, x, -y],
      5: [left + up, y, x],
      6: [left + down, -y, x],
      7: [right + down, -y, -x],
      8: [right + up, y, -x],
    } as Record<number, [number, number, number]>
  )[orientation] as [number, number, number]
  const shown = samples instanceof Uint16Array ? new Uint16Array(samples.length) : new Uint8Array(samples.length)
  for (let row = 0, to = 0; row < shownHeight; row++) {
    let from = first + row * across
    for (let column = 0; column < shownWidth; column++, from += along)
      for (let channel = 0; channel < channels; channel++) shown[to++] = samples[from + channel] as number
  }
  return { ...picture, width: shownWidth, height: shownHeight, samples: shown }
}
