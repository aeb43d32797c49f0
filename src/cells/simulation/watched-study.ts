import type { ReactiveController, ReactiveControllerHost } from 'lit'
import { upstreamOf } from '../../worksheet/engine/partial-recompute.ts'
import type { Sheet } from '../../worksheet/index.ts'
import type { Study } from '../../worksheet/simulation/study.ts'
import { type Asked, simulationsOf } from './simulation-client.ts'

/** What an element wants simulated. */
export interface Wanted {
  readonly names: readonly string[]
  readonly tries: number
  readonly seed: number
  /** Runs by itself when nothing else is to do, and then not for long. */
  readonly inIdleTime: boolean
}

const PAUSE_MS = 250
const LONGEST_IDLE_MS = 4000

const whenIdle = (work: () => void): void => {
  if ('requestIdleCallback' in globalThis) requestIdleCallback(work, { timeout: 2000 })
  else setTimeout(work)
}

/** A study that follows the sheet: what it is made of changes, and it is made again once typing pauses. */
export class WatchedStudy implements ReactiveController {
  study: Study | undefined
  /** A share of the work, while it runs. */
  progress: number | undefined
  failed = false
  private sheet: Sheet | undefined
  private wanted: Wanted | undefined
  private madeOf: readonly unknown[] = []
  private asked: Asked | undefined
  private pause: ReturnType<typeof setTimeout> | undefined
  private unwatch: (() => void) | undefined
  private release: (() => void) | undefined

  constructor(private readonly host: ReactiveControllerHost) {
    host.addController(this)
  }

  /** Wants something else, or nothing. */
  want(sheet: Sheet, wanted: Wanted | undefined): void {
    const changed = sheet !== this.sheet || JSON.stringify(wanted) !== JSON.stringify(this.wanted)
    if (!changed) return
    this.leave()
    this.sheet = sheet
    this.wanted = wanted
    this.enter()
  }

  hostConnected(): void {
    this.enter()
  }

  hostDisconnected(): void {
    this.leave()
  }

  cancel(): void {
    clearTimeout(this.pause)
    this.asked?.cancel()
    this.asked = undefined
    this.progress = undefined
    this.host.requestUpdate()
  }

  /** Makes it once more, though nothing has changed. */
  again(): void {
    this.madeOf = []
    this.changed()
  }

  private enter(): void {
    const { sheet, wanted } = this
    if (!sheet || !wanted || this.unwatch) return
    this.release = simulationsOf(sheet).hold()
    this.unwatch = sheet.watch(() => this.changed())
    this.madeOf = []
    this.changed()
  }

  private leave(): void {
    this.unwatch?.()
    this.unwatch = undefined
    this.cancel()
    this.study = undefined
    this.release?.()
    this.release = undefined
  }

  private changed(): void {
    const { sheet, wanted } = this
    if (!sheet || !wanted) return
    const madeOf = cellsBehind(sheet, wanted.names)
    if (madeOf.length === this.madeOf.length && madeOf.every((cell, i) => cell === this.madeOf[i])) return
    this.madeOf = madeOf
    this.study = undefined
    this.cancel()
    this.pause = setTimeout(
      () => (wanted.inIdleTime ? whenIdle(() => this.start(wanted)) : this.start(wanted)),
      PAUSE_MS,
    )
  }

  private start(wanted: Wanted): void {
    const { sheet } = this
    // Meanwhile something else may have been asked for.
    if (!sheet || wanted !== this.wanted || !this.unwatch || this.asked) return
    const { names, tries, seed, inIdleTime } = wanted
    this.progress = 0
    this.failed = false
    const asked = simulationsOf(sheet).ask(
      sheet.worksheet,
      { names, tries, seed, ...(inIdleTime ? { longest: LONGEST_IDLE_MS } : {}) },
      (share) => {
        if (this.asked !== asked) return
        this.progress = share
        this.host.requestUpdate()
      },
    )
    this.asked = asked
    this.host.requestUpdate()
    const end = (study: Study | undefined, failed: boolean): void => {
      if (this.asked !== asked) return
      this.asked = undefined
      this.progress = undefined
      this.study = study
      this.failed = failed
      this.host.requestUpdate()
    }
    asked.answer.then(
      (study) => end(study, false),
      () => end(undefined, true),
    )
  }
}

/** The cells that figures are made of: as long as these are the same, so is what is simulated. */
function cellsBehind(sheet: Sheet, names: readonly string[]): unknown[] {
  const { engine } = sheet
  const nodes = names.flatMap((name) => engine.named(name) ?? [])
  const { layout } = engine
  const positions = upstreamOf(
    layout,
    nodes.map((node) => engine.positionOf(node)),
  )
  return positions.map((at) => layout.order[at]?.cell)
}
