import { html, type TemplateResult } from 'lit'
import type { Frame } from '../../worksheet/index.ts'
import { ticked } from '../fields/labelled.ts'
import type { Size } from './area-shapes.ts'
import type { FrameReader } from './frame-reader.ts'
import { frameWords as words } from './words.ts'

type Preview = NonNullable<NonNullable<Frame['picture']>['preview']>

/** The longer side of a small copy, px, and its quality: some ten kilobytes. */
const LONGER = 320
const QUALITY = 0.6

/** A small copy of the picture that is open, as a JPEG in a data address. */
export async function previewOf(reader: FrameReader, { width, height }: Size): Promise<Preview> {
  const step = Math.max(1, Math.max(width, height) / LONGER)
  const part = {
    x: 0,
    y: 0,
    step,
    width: Math.max(1, Math.round(width / step)),
    height: Math.max(1, Math.round(height / step)),
  }
  const canvas = document.createElement('canvas')
  canvas.width = part.width
  canvas.height = part.height
  canvas.getContext('2d')?.putImageData(await reader.look(part), 0, 0)
  return { image: canvas.toDataURL('image/jpeg', QUALITY) }
}

/** Whether a small copy is saved, and whether it is sent along. */
export function previewPart(
  cell: Frame,
  take: (() => void) | undefined,
  put: (picture: NonNullable<Frame['picture']>) => void,
): TemplateResult {
  const { picture } = cell
  const preview = picture?.preview
  const drop = (): void => {
    if (!picture) return
    const { preview: _, ...rest } = picture
    put(rest)
  }
  return html`
    ${take || preview ? ticked(words.keepPreview, preview !== undefined, (on) => (on ? take?.() : drop())) : ''}
    ${
      picture && preview
        ? ticked(words.sendPreview, preview.travels === true, (on) =>
            put({ ...picture, preview: { ...preview, travels: on } }),
          )
        : ''
    }
  `
}

/** The small copy as it may be shown: a JPEG in a data address, and nothing else. */
export const shownPreview = ({ picture }: Frame): string | undefined =>
  /^data:image\/jpeg;base64,[A-Za-z0-9+/=]+$/.test(picture?.preview?.image ?? '') ? picture?.preview?.image : undefined
