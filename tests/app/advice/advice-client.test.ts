import fc from 'fast-check'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { AdviceClient } from '../../../src/app/advice/advice-client.ts'
import type { Worksheet } from '../../../src/worksheet/index.ts'

// The parts come from the build, and only questions about parts ask for them.
vi.mock('../../../src/app/templates/part-library.ts', () => ({ parts: async () => ({}) }))

/** A worker that answers when the test says so, and never after it was ended. */
class SlowWorker {
  static readonly alive = new Set<SlowWorker>()
  onmessage: ((event: { data: unknown }) => void) | null = null
  onerror: (() => void) | null = null
  private readonly asked: { worksheet: Worksheet; target?: { text: string } }[] = []

  constructor() {
    SlowWorker.alive.add(this)
  }
  postMessage(request: { worksheet: Worksheet; target?: { text: string } }): void {
    this.asked.push(request)
  }
  terminate(): void {
    SlowWorker.alive.delete(this)
  }
  /** Answers the oldest open question with what it was about. */
  answer(): void {
    const request = this.asked.shift()
    if (request) this.onmessage?.({ data: { about: request.worksheet.title, target: request.target?.text } })
  }
  fail(): void {
    this.asked.shift()
    this.onerror?.()
  }
}

beforeEach(() => {
  vi.stubGlobal('Worker', SlowWorker)
})
afterEach(() => {
  vi.unstubAllGlobals()
  SlowWorker.alive.clear()
})

const titled = (title: string): Worksheet => ({ format: 'evenfield-worksheet', version: 2, title, cells: [] })

/** What may happen while one types: a key, another target, an answer, a worker that breaks. */
const events = fc.array(
  fc.oneof(
    { weight: 4, arbitrary: fc.record({ ask: fc.constant('sheet' as const) }) },
    { weight: 2, arbitrary: fc.record({ ask: fc.constant('target' as const) }) },
    { weight: 2, arbitrary: fc.record({ ask: fc.constant('again' as const) }) },
    { weight: 4, arbitrary: fc.record({ answer: fc.nat(3) }) },
    { weight: 1, arbitrary: fc.record({ fail: fc.nat(3) }) },
  ),
  { minLength: 1, maxLength: 40 },
)

test('advice is about the sheet it was asked for or there is none, in whatever order keys and answers come', async () => {
  await fc.assert(
    fc.asyncProperty(events, async (happens) => {
      SlowWorker.alive.clear()
      const client = new AdviceClient()
      const asked: { about: string; target: string | undefined; answer: Promise<unknown> }[] = []
      let sheet = titled('0')
      const ask = (target?: string): void => {
        const question = target === undefined ? {} : { target: { id: 'r', text: target } }
        asked.push({ about: sheet.title, target, answer: client.answer(question, sheet, []) })
      }
      const worker = (at: number): SlowWorker | undefined => [...SlowWorker.alive][at % SlowWorker.alive.size]
      for (const [n, event] of happens.entries()) {
        if ('answer' in event) worker(event.answer)?.answer()
        else if ('fail' in event) worker(event.fail)?.fail()
        else {
          if (event.ask !== 'again') sheet = titled(String(n + 1))
          ask(event.ask === 'target' ? `${n} mm` : undefined)
        }
      }
      // What is still open is answered, or was ended: no promise stays open for ever.
      for (const one of SlowWorker.alive) one.answer()
      client.close()
      let given = 0
      for (const { about, target, answer } of asked) {
        const found = await answer
        if (found === undefined) continue
        given++
        expect(found).toEqual({ about, target })
      }
      // The latest question about the sheet is never the one that was given up, unless its worker broke.
      if (!happens.some((event) => 'fail' in event) && asked.length > 0) expect(given).toBeGreaterThan(0)
    }),
    { numRuns: 400 },
  )
})

test('a question asked again about the same sheet is computed once', async () => {
  const client = new AdviceClient()
  const sheet = titled('one')
  const [first, second] = [client.answer({}, sheet, []), client.answer({}, sheet, [])]
  expect(SlowWorker.alive.size).toBe(1)
  for (const one of SlowWorker.alive) one.answer()
  expect(await first).toEqual(await second)
  client.close()
  expect(SlowWorker.alive.size).toBe(0)
})
