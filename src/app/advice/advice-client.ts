import type { Advice, AdviceQuestion, Offers } from '../../cells/details/advice-request.ts'
import { scriptAddress } from '../../cells/worker/script-address.ts'
import type { Piece } from '../../kit/piece.ts'
import type { SheetAdvice, TargetAdvice } from '../../worksheet/advice/plan.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { parts } from '../templates/part-library.ts'
import type { AdviceRequest } from './advice-worker.ts'
import address from './advice-worker.ts?worker&url'

/** A worker and the one question it answers: a newer question ends the one before, whose answer is no longer needed. */
class Lane {
  private worker: Worker | undefined
  private giveUp: (() => void) | undefined

  ask<Answer>(request: AdviceRequest): Promise<Answer | undefined> {
    if (this.giveUp) this.close()
    this.worker ??= new Worker(scriptAddress(address), { type: 'module' })
    const { worker } = this
    return new Promise((resolve) => {
      const end = (answer: Answer | undefined): void => {
        this.giveUp = undefined
        worker.onmessage = null
        worker.onerror = null
        resolve(answer)
      }
      this.giveUp = () => end(undefined)
      worker.onmessage = ({ data }: MessageEvent<Answer>) => end(data)
      // Without the network the worker’s script may be missing: the sheet goes on without advice.
      worker.onerror = () => end(undefined)
      worker.postMessage(request)
    })
  }

  close(): void {
    this.giveUp?.()
    this.worker?.terminate()
    this.worker = undefined
  }
}

/** Computes advice in workers, so that no key waits for it. */
export class AdviceClient {
  // A question about one result does not end the one about the whole sheet.
  private readonly forChecks = new Lane()
  private readonly forResults = new Lane()
  private readonly forParts = new Lane()
  private latestOffers: { readonly worksheet: Worksheet; readonly answer: Promise<Offers | undefined> } | undefined
  private latest: { readonly worksheet: Worksheet; readonly answer: Promise<SheetAdvice | undefined> } | undefined

  /** What a question asks for. */
  answer(
    { target, offers }: Pick<AdviceQuestion, 'target' | 'offers'>,
    worksheet: Worksheet,
    pieces: readonly Piece[],
  ): Promise<Advice | undefined> {
    if (offers) return this.offersFor(worksheet)
    return target ? this.forTarget(worksheet, pieces, target.id, target.text) : this.forSheet(worksheet, pieces)
  }

  /** The parts that would help a worksheet; undefined where it was overtaken by a newer question, or parts cannot be fetched. */
  private offersFor(worksheet: Worksheet): Promise<Offers | undefined> {
    if (this.latestOffers?.worksheet === worksheet) return this.latestOffers.answer
    const answer = parts().then(
      (library) => this.forParts.ask<Offers>({ worksheet, pieces: [], library }),
      () => undefined,
    )
    this.latestOffers = { worksheet, answer }
    return answer
  }

  /** Advice on a worksheet; undefined where it was overtaken by a newer question. */
  private forSheet(worksheet: Worksheet, pieces: readonly Piece[]): Promise<SheetAdvice | undefined> {
    if (this.latest?.worksheet === worksheet) return this.latest.answer
    const answer = this.forChecks.ask<SheetAdvice>({ worksheet, pieces })
    this.latest = { worksheet, answer }
    return answer
  }

  /** Plans that bring a result to a value; undefined where they were overtaken by a newer question. */
  private forTarget(
    worksheet: Worksheet,
    pieces: readonly Piece[],
    id: string,
    text: string,
  ): Promise<TargetAdvice | undefined> {
    return this.forResults.ask<TargetAdvice>({ worksheet, pieces, target: { id, text } })
  }

  close(): void {
    this.forChecks.close()
    this.forResults.close()
    this.forParts.close()
    this.latest = undefined
    this.latestOffers = undefined
  }
}
