import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { basename } from 'node:path'
import { parentPort, Worker, workerData } from 'node:worker_threads'
import {
  FrameError,
  type FramePicture,
  foundAgain,
  type MarkedArea,
  measureEach,
  openFrame,
  readAreas,
} from '../frame/index.ts'
import { whyUnread } from './input.ts'
import { cornersUnfound, noMemory } from './words.ts'

/** One picture of a folder, measured or with the reason why not. */
export interface MeasuredFile {
  readonly name: string
  /** SHA-256 of the file, as a sheet knows its pictures by; empty where it could not be read. */
  readonly digest: string
  readonly seconds: number
  readonly pixels?: FramePicture['pixels']
  readonly taken?: FramePicture['taken']
  readonly readings?: Readonly<Record<string, object>>
  readonly warnings?: readonly string[]
  readonly error?: string
}

/** What a worker is started with; by the mark it knows that it is one. */
interface Task {
  readonly measuresFrames: true
  readonly areas: readonly MarkedArea[]
}

/** Whether this thread was started to measure frames. */
export const isFrameWorker = (): boolean => (workerData as Task | null)?.measuresFrames === true

/** Whether a card's corners are still to be found. */
export const isUnmarked = ({ kind, corners }: MarkedArea): boolean => kind === 'square' && corners === undefined

/** Measures pictures, as many at a time as there are cores; each is let go before the next, so that memory stays flat. */
export async function measureAll(
  paths: readonly string[],
  areas: readonly MarkedArea[],
  program: string,
): Promise<MeasuredFile[]> {
  const measured: MeasuredFile[] = []
  let next = 0
  const work = (): Promise<void> =>
    new Promise((done, fail) => {
      const worker = new Worker(new URL(program), {
        workerData: { measuresFrames: true, areas } satisfies Task,
        // Run from its sources, a worker needs what reads TypeScript, as the program itself did.
        ...(program.endsWith('.ts') ? { execArgv: ['--import', 'tsx'] } : {}),
      })
      let at = -1
      const give = (): void => {
        at = next++
        if (at < paths.length) worker.postMessage(paths[at])
        else void worker.terminate().then(() => done())
      }
      worker.on('message', (result: MeasuredFile) => {
        measured[at] = result
        give()
      })
      worker.on('error', (error) => {
        // A worker out of memory takes only its picture along; another goes on behind it.
        if (at >= paths.length) return fail(error)
        measured[at] = {
          name: basename(paths[at] as string),
          digest: '',
          seconds: 0,
          error: noMemory,
        }
        work().then(done, fail)
      })
      give()
    })
  await Promise.all(Array.from({ length: Math.min(paths.length, availableParallelism()) }, work))
  return measured
}

/** The worker’s side: one path in, one result out. */
export function serveFrames(): void {
  const { areas } = workerData as Task
  parentPort?.on('message', (path: string) => {
    parentPort?.postMessage(measureFile(path, areas))
  })
}

function measureFile(path: string, areas: readonly MarkedArea[]): MeasuredFile {
  const name = basename(path)
  const started = performance.now()
  const seconds = (): number => (performance.now() - started) / 1000
  try {
    const file = readFileSync(path)
    const digest = createHash('sha256').update(file).digest('hex')
    const frame = openFrame(file)
    // As in the sheet's own frame: the card or chart is found where it lies in this picture.
    const again = foundAgain(frame, areas)
    const { readings, refused } = measureEach(frame, readAreas(again.areas.filter((area) => !isUnmarked(area))))
    const warnings = [...again.unfound.map(cornersUnfound), ...Object.values(refused), ...frame.warnings]
    return { name, digest, seconds: seconds(), pixels: frame.pixels, taken: frame.taken, readings, warnings }
  } catch (error) {
    const why = error instanceof FrameError ? error.message : whyUnread(error)
    return { name, digest: '', seconds: seconds(), error: why }
  }
}
