import { signal } from '@lit-labs/signals'

/** What the stand shows: what is open before one starts, one step, or all figures. */
export type StandMode = 'check' | 'step' | 'all'

/** Shared by the stand and the switch in the head. */
export const standMode = signal<StandMode>('step')
