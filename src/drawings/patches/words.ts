import { agree, plural } from '../../units/plural.ts'

/** The texts in and below a chart of colour patches. */
export const PATCHES_WORDS = {
  noDifferences: 'no differences are known.',
  namesUnusable: 'The patches are not named: their names must be texts.',
  patch: (number: number) => `patch ${number}`,
  notANumber: (name: string) => `“${name}” is left out: its difference must be a number.`,
  notAboveZero: (what: string) => `${what} is not drawn: it must be above zero.`,
  patchAllowance: 'The difference allowed for a patch',
  meanAllowance: 'The mean difference allowed',
  notDrawn: (count: number, most: string) =>
    `${plural(count, 'patch', 'patches')} with the smallest differences ${agree(count, 'is', 'are')} not drawn; none differs by more than ${most}.`,

  worst: 'worst',
  over: 'over',
  mean: 'mean',
  allowed: (figure: string) => [`allowed ${figure}`, figure],
  meanAllowed: (figure: string) => [`mean allowed ${figure}`, `mean ${figure}`],

  onePatch: 'The difference of one patch from its aim.',
  patches: (count: number, drawn: number) =>
    `The differences of ${plural(count, 'patch', 'patches')} from their aims${drawn < count ? `, the ${drawn} worst of them` : ''}.`,
  each: (name: string, figure: string) => `${name} ${figure}`,
  list: (list: string) => `${list}.`,
  worstIs: (name: string, figure: string) => `The worst is ${name} with ${figure}.`,
  patchLimit: (limit: string, over: number) =>
    `A difference of ${limit} is allowed; ${over === 0 ? 'no patch has more' : `${plural(over, 'patch', 'patches')} ${agree(over, 'has', 'have')} more`}.`,
  meanIs: (figure: string) => `The mean is ${figure}.`,
  meanLimit: (figure: string, limit: string, over: boolean) =>
    `The mean is ${figure}; ${limit} is allowed${over ? ', which it exceeds' : ''}.`,
}
