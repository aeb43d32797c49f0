import { plural } from '../../units/plural.ts'

/** The texts in and below a plot of the light over time. */
export const OVER_TIME_WORDS = {
  limit: 'The change allowed',
  notEnough: 'at least two frames of the card are needed, each with its time.',
  unlike: 'The changes are left out: there must be one for each time.',
  hours: 'Hours since the first',
  minutes: 'Minutes since the first',
  days: 'Days since the first',
  stops: 'Change, stops',
  allowed: (limit: string) => `±${limit}`,
  introduction: (count: number, span: string) =>
    `The light of ${plural(count, 'frame')} over ${span}, in stops from the first.`,
  spanHours: (hours: string) => `${hours} h`,
  spanDays: (days: string) => `${days} d`,
  spanMinutes: (minutes: string) => `${minutes} min`,
  greatest: (change: string, after: string) => `The largest change is ${change} stop, after ${after}.`,
  within: (limit: string) => `All are within ±${limit}.`,
  beyond: (count: number, limit: string) => `${plural(count, 'frame')} beyond ±${limit}, marked by an open circle.`,
  after: 'After',
  change: 'Change',
} as const
