import type { RasterPart } from '../../frame/raster.ts'
import { scriptAddress } from '../worker/script-address.ts'
import type { FrameArea } from './area-shapes.ts'
import type { FrameReply, FrameTask, Measured, Opened } from './frame-messages.ts'
import workerAddress from './frame-worker.ts?worker&url'
import { frameWords } from './words.ts'

/** A file that cannot be measured, or an area; the message says why. */
class UnreadFrame extends Error {}

/** Closed before it was done; nobody waits for it any more. */
export class FrameCancelled extends Error {}

interface Waiting {
  readonly done: (reply: FrameReply) => void
  readonly fail: (error: Error) => void
  readonly progress?: () => void
}

/** A picture in a worker, so that the page stays responsive while it is decoded and measured. */
export class FrameReader {
  private worker = new Worker(scriptAddress(workerAddress), { type: 'module' })
  private waiting = new Map<number, Waiting>()
  private next = 0

  constructor() {
    this.worker.onmessage = ({ data }: MessageEvent<FrameReply>) => this.take(data)
    this.worker.onerror = (event) => {
      event.preventDefault()
      this.failAll(new UnreadFrame(frameWords.noMemory))
    }
  }

  async open(
    file: File,
    areas: readonly FrameArea[],
    marked: string | undefined,
    decoded: () => void,
  ): Promise<Opened> {
    let bytes: ArrayBuffer
    try {
      bytes = await file.arrayBuffer()
    } catch {
      throw new UnreadFrame(frameWords.notReadable)
    }
    const reply = await this.ask({ do: 'open', file: bytes, areas, marked }, [bytes], decoded)
    return (reply as { opened: Opened }).opened
  }

  async measure(areas: readonly FrameArea[]): Promise<Measured> {
    return ((await this.ask({ do: 'measure', areas })) as { measured: Measured }).measured
  }

  /** The area with its corners as they are found; undefined where that is not safe. */
  async find(area: FrameArea): Promise<FrameArea | undefined> {
    return ((await this.ask({ do: 'find', area })) as { area: FrameArea | undefined }).area
  }

  async look(part: RasterPart): Promise<ImageData> {
    const { raster } = (await this.ask({ do: 'look', part })) as { raster: Uint8ClampedArray<ArrayBuffer> }
    return new ImageData(raster, part.width, part.height)
  }

  close(): void {
    this.worker.terminate()
    this.failAll(new FrameCancelled('cancelled'))
  }

  private ask(task: FrameTask, transfer: Transferable[] = [], progress?: () => void): Promise<FrameReply> {
    const id = this.next++
    return new Promise((done, fail) => {
      this.waiting.set(id, { done, fail, ...(progress ? { progress } : {}) })
      this.worker.postMessage({ id, task }, transfer)
    })
  }

  private take(reply: FrameReply): void {
    const waiting = this.waiting.get(reply.id)
    if (!waiting) return
    if ('progress' in reply) {
      waiting.progress?.()
      return
    }
    this.waiting.delete(reply.id)
    if ('error' in reply) waiting.fail(new UnreadFrame(reply.error))
    else waiting.done(reply)
  }

  private failAll(error: Error): void {
    for (const { fail } of this.waiting.values()) fail(error)
    this.waiting.clear()
  }
}
