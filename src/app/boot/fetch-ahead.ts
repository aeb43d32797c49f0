import type { Route } from '../common/route.ts'
import { template } from '../templates/templates.ts'

/**
 * Asks for what the first address surely needs while the store is still being opened. What does not arrive is asked for
 * again, and reported, where it is used.
 */
export function fetchAhead(route: Route): void {
  if (route.at !== 'sheet' && route.at !== 'new') return
  const wanted: Promise<unknown>[] = [import('../sheet/opening.ts')]
  if (route.at === 'new') wanted.push(template(route.template, route.own))
  if (route.face === 'build') wanted.push(import('../build/build-face.ts'))
  for (const one of wanted) one.catch(() => {})
}
