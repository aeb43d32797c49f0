import { PX_PER_MM } from '../../drawings/canvas/scale.ts'
import { type Drawing, toSvgText } from '../../drawings/canvas/tree.ts'
import { FILE_ENDING, fileName } from '../../storage/exchange/file.ts'

export type SavedAs = 'svg' | 'png'

/** Two dots for each CSS px: sharp on any screen, and in print at 192 dpi. */
const PNG_SCALE = 2

/** The sheet's title and the drawing's, as a file name any system takes. */
const nameOf = (sheet: string, drawing: string, ending: SavedAs): string =>
  `${fileName(`${sheet} ${drawing}`).slice(0, -FILE_ENDING.length)}.${ending}`

/** The drawing as a file that stands alone, of a given size; the scale written in it is true at that size. */
const svgText = ({ node }: Drawing, width: string, height: string): string =>
  toSvgText({ ...node, attributes: { ...node.attributes, width, height } })

async function pngOf(drawing: Drawing, enlarged: number): Promise<Blob> {
  const [width, height] = [Math.ceil(drawing.width * enlarged), Math.ceil(drawing.height * enlarged)]
  const text = svgText(drawing, `${width}`, `${height}`)
  const address = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }))
  try {
    const image = new Image()
    image.src = address
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = width * PNG_SCALE
    canvas.height = height * PNG_SCALE
    const paper = canvas.getContext('2d')
    if (!paper) throw new Error('This browser cannot draw a picture.')
    // Black ink needs a white ground, wherever the picture is put.
    paper.fillStyle = '#fff'
    paper.fillRect(0, 0, canvas.width, canvas.height)
    paper.drawImage(image, 0, 0, canvas.width, canvas.height)
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'))
    if (!blob) throw new Error('The picture is too large for this browser.')
    return blob
  } finally {
    URL.revokeObjectURL(address)
  }
}

/** Saves a drawing as a download. `enlarged`: how many times larger than its view box it is shown. */
export async function saveDrawing(drawing: Drawing, sheet: string, as: SavedAs, enlarged: number): Promise<void> {
  const mm = (px: number): string => `${((px * enlarged) / PX_PER_MM).toFixed(2)}mm`
  const blob =
    as === 'png'
      ? await pngOf(drawing, enlarged)
      : new Blob([svgText(drawing, mm(drawing.width), mm(drawing.height))], { type: 'image/svg+xml' })
  const address = URL.createObjectURL(blob)
  const link = document.createElement('a')
  link.href = address
  link.download = nameOf(sheet, drawing.title, as)
  link.click()
  // The download reads the address after this turn.
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
