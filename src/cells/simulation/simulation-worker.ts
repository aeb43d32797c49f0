import { LIBRARY } from '../../functions/index.ts'
import { FullSheet } from '../../worksheet/renaming/full-sheet.ts'
import { study } from '../../worksheet/simulation/study.ts'
import type { SimulationReply, SimulationRequest } from './simulation-messages.ts'

/** Messages more often than this would only be work for the page. */
const EVERY_MS = 60

const reply = (message: SimulationReply): void => postMessage(message)

addEventListener('message', ({ data: { worksheet, question } }: MessageEvent<SimulationRequest>) => {
  const sheet = new FullSheet(worksheet, LIBRARY)
  let last = performance.now()
  const found = study(sheet.engine, question, (progress) => {
    if (performance.now() - last < EVERY_MS) return
    last = performance.now()
    reply({ progress })
  })
  reply({ study: found })
})
