import {
  FrameError,
  type FramePicture,
  foundAgain,
  measureEach,
  openFrame,
  readAreas,
  withCorners,
} from '../../frame/index.ts'
import { rasterOf } from '../../frame/raster.ts'
import { type FrameArea, withPlace } from './area-shapes.ts'
import type { FrameReply, FrameRequest, Measured } from './frame-messages.ts'
import { frameWords } from './words.ts'

/** The part of a worker's global scope used here, which the page’s types do not include. */
declare const self: {
  onmessage: ((event: MessageEvent<FrameRequest>) => void) | null
  postMessage(message: FrameReply, transfer?: Transferable[]): void
}

/** The picture that is open. It never leaves this thread but as a look at a part of it. */
let frame: FramePicture | undefined

self.onmessage = ({ data: { id, task } }) => {
  answer(id, task).catch((error: unknown) => {
    const known = error instanceof FrameError
    const message = known ? error.message : frameWords.cannotMeasure((error as Error).message)
    self.postMessage({ id, error: message })
  })
}

async function answer(id: number, task: FrameRequest['task']): Promise<void> {
  if (task.do === 'open') {
    const digest = await digestOf(task.file)
    frame = openFrame(new Uint8Array(task.file))
    self.postMessage({ id, progress: 'decoded' })
    const { pixels, taken, warnings } = frame
    // Areas that came with the sheet get a place in the picture, to be dragged from there.
    const isMarked = task.marked !== undefined && task.marked === digest
    const again = isMarked ? { areas: task.areas, found: [], unfound: [] } : foundAgain(frame, task.areas)
    const areas = again.areas.map((area) => withPlace(area, pixels))
    self.postMessage({ id, opened: { pixels, taken, warnings, digest, ...again, areas, ...measured(frame, areas) } })
  } else if (!frame) throw new FrameError(frameWords.noPicture)
  else if (task.do === 'measure') self.postMessage({ id, measured: measured(frame, task.areas) })
  else if (task.do === 'find') self.postMessage({ id, area: withCorners(frame, task.area) })
  else {
    const raster = rasterOf(frame.picture, task.part)
    self.postMessage({ id, raster }, [raster.buffer])
  }
}

/** Areas are read one by one: what is wrong with one says nothing of the others. */
function measured(open: FramePicture, areas: readonly FrameArea[]): Measured {
  const readings: [string, Record<string, unknown>][] = []
  const refused: [string, string][] = []
  for (const area of areas)
    try {
      const found = measureEach(open, readAreas([area]))
      readings.push(
        ...Object.entries(found.readings).map(
          ([name, reading]) => [name, { ...reading }] as [string, Record<string, unknown>],
        ),
      )
      refused.push(...Object.entries(found.refused))
    } catch (error) {
      if (!(error instanceof FrameError)) throw error
      refused.push([area.name, error.message])
    }
  return { readings: Object.fromEntries(readings), refused: Object.fromEntries(refused) }
}

async function digestOf(file: ArrayBuffer): Promise<string> {
  const { subtle } = globalThis.crypto
  if (!subtle) return ''
  const bytes = new Uint8Array(await subtle.digest('SHA-256', file))
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
