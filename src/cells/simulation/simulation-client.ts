import type { Sheet, Worksheet } from '../../worksheet/index.ts'
import type { Study, StudyQuestion } from '../../worksheet/simulation/study.ts'
import { scriptAddress } from '../worker/script-address.ts'
import type { SimulationReply, SimulationRequest } from './simulation-messages.ts'
import workerAddress from './simulation-worker.ts?worker&url'
import { simulationWords as words } from './words.ts'

/** The worker's script could not be fetched, or it ran out of memory. */
class SimulationFailed extends Error {}

interface Job {
  readonly request: SimulationRequest
  readonly progress: (share: number) => void
  /** Without a study where it was cancelled. */
  readonly done: (study?: Study) => void
  readonly fail: (error: Error) => void
}

export interface Asked {
  readonly answer: Promise<Study | undefined>
  readonly cancel: () => void
}

/** Simulates beside the page, one question after the other. What was answered is known until the worksheet changes. */
export class SimulationClient {
  private worker: Worker | undefined
  private running: Job | undefined
  private readonly queue: Job[] = []
  private users = 0
  private known: { readonly worksheet: Worksheet; readonly studies: Map<string, Study> } | undefined

  /** The thread runs for as long as an element may ask. Returns a function that releases it. */
  hold(): () => void {
    this.users++
    return () => {
      this.users--
      if (this.users === 0 && !this.running) this.close()
    }
  }

  /** The latest study of a name, as long as the worksheet has not changed since. */
  latest(worksheet: Worksheet, name: string): Study | undefined {
    return this.known?.worksheet === worksheet ? this.known.studies.get(name) : undefined
  }

  ask(worksheet: Worksheet, question: StudyQuestion, progress: (share: number) => void = () => {}): Asked {
    let job!: Job
    const answer = new Promise<Study | undefined>((resolve, reject) => {
      job = { request: { worksheet, question }, progress, done: resolve, fail: reject }
    })
    this.queue.push(job)
    this.next()
    return { answer, cancel: () => this.cancel(job) }
  }

  private cancel(job: Job): void {
    const at = this.queue.indexOf(job)
    if (at >= 0) this.queue.splice(at, 1)
    // A thread that is computing receives no messages, so it is terminated.
    if (this.running === job) this.close()
    job.done()
    this.next()
  }

  private close(): void {
    this.worker?.terminate()
    this.worker = undefined
    this.running = undefined
  }

  private next(): void {
    if (this.running) return
    const job = this.queue.shift()
    if (!job) {
      if (this.users === 0) this.close()
      return
    }
    this.running = job
    this.worker ??= new Worker(scriptAddress(workerAddress), { type: 'module' })
    const { worker } = this
    worker.onmessage = ({ data }: MessageEvent<SimulationReply>) => {
      if ('progress' in data) {
        job.progress(data.progress)
        return
      }
      this.running = undefined
      this.remember(job.request, data.study)
      job.done(data.study)
      this.next()
    }
    worker.onerror = (event) => {
      event.preventDefault()
      this.close()
      job.fail(new SimulationFailed(words.stopped))
      this.next()
    }
    worker.postMessage(job.request)
  }

  private remember({ worksheet, question }: SimulationRequest, study: Study): void {
    if (this.known?.worksheet !== worksheet) this.known = { worksheet, studies: new Map() }
    for (const name of question.names) this.known.studies.set(name, study)
  }
}

const clients = new WeakMap<Sheet, SimulationClient>()

/** The one client of an open sheet. */
export function simulationsOf(sheet: Sheet): SimulationClient {
  const known = clients.get(sheet) ?? new SimulationClient()
  clients.set(sheet, known)
  return known
}
