import type { Worksheet } from '../../worksheet/index.ts'
import type { Study, StudyQuestion } from '../../worksheet/simulation/study.ts'

/** What the page asks of the thread that simulates. */
export interface SimulationRequest {
  readonly worksheet: Worksheet
  readonly question: StudyQuestion
}

export type SimulationReply = { readonly progress: number } | { readonly study: Study }
