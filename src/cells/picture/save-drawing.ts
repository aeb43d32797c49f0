import { PX_PER_MM } from '../../drawings/canvas/scale.ts'
import { type Drawing, toSvgText } from '../../drawings/canvas/tree.ts'
import { download, FILE_ENDING, fileName } from '../../storage/exchange/file.ts'
import { pictureWords } from './words.ts'

export type SavedAs = 'svg' | 'png'

/** Two pixels per CSS pixel: sharp on any screen, and 192 dpi in print. */
const PNG_SCALE = 2

/** The titles of sheet and drawing as a file name that any system accepts. */
const nameOf = (sheet: string, drawing: string, ending: SavedAs): string =>
  `${fileName(`${sheet} ${drawing}`).slice(0, -FILE_ENDING.length)}.${ending}`

/** The drawing as a complete SVG file of a given size; the scale written in it is true at that size. */
const svgText = ({ node }: Drawing, width: string, height: string): string =>
  toSvgText({ ...node, attributes: { ...node.attributes, width, height } })

async function pngOf(drawing: Drawing): Promise<Blob> {
  const [width, height] = [Math.ceil(drawing.width), Math.ceil(drawing.height)]
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
    if (!paper) throw new Error(pictureWords.cannotDraw)
    // Black lines need a white ground wherever the picture is used.
    paper.fillStyle = '#fff'
    paper.fillRect(0, 0, canvas.width, canvas.height)
    paper.drawImage(image, 0, 0, canvas.width, canvas.height)
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'))
    if (!blob) throw new Error(pictureWords.tooLarge)
    return blob
  } finally {
    URL.revokeObjectURL(address)
  }
}

/** Saves a drawing as a download, as large as it is shown. Throws if it cannot. */
export async function saveDrawing(drawing: Drawing, sheet: string, as: SavedAs): Promise<void> {
  const mm = (px: number): string => `${(px / PX_PER_MM).toFixed(2)}mm`
  const blob =
    as === 'png'
      ? await pngOf(drawing)
      : new Blob([svgText(drawing, mm(drawing.width), mm(drawing.height))], { type: 'image/svg+xml' })
  download(nameOf(sheet, drawing.title, as), blob)
}
