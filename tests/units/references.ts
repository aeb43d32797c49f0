import Qty from 'js-quantities'
import { all, create } from 'mathjs'

/** One unit as general-purpose libraries know it, or the definition of one they do not. */
export interface Reference {
  /** Its name in mathjs, and the coherent unit to express it in. */
  readonly mathjs?: readonly [name: string, coherent: string]
  /** Its name in js-quantities, and the coherent unit to express it in. */
  readonly quantities?: readonly [name: string, coherent: string]
  /** How many coherent SI units one of it is by definition, and where that is. */
  readonly definition?: readonly [factor: number, source: string]
}

/** Below the line js-quantities takes no parentheses: `kg/m*s2` is kg/(m s²). */
const same = (name: string, coherent = name, inQuantities = coherent): Reference => ({
  mathjs: [name, coherent],
  quantities: [name, inQuantities],
})

const SI_9 = 'SI Brochure, 9th ed.'

/** Every unit of the table by its symbol. What is new in the table and missing here fails the test. */
export const REFERENCES: Readonly<Record<string, Reference>> = {
  m: same('m'),
  in: same('in', 'm'),
  ft: same('ft', 'm'),
  yd: same('yd', 'm'),
  mi: same('mi', 'm'),
  pt: { definition: [0.0254 / 72, 'the desktop-publishing point: 1/72 in'] },
  mil: { mathjs: ['mil', 'm'], definition: [2.54e-5, 'NIST SP 811, B.9: 1 mil = 0.001 in'] },
  nmi: { quantities: ['nmi', 'm'], definition: [1852, 'SI Brochure, 8th ed., table 8: the nautical mile, exact'] },
  fc: { definition: [1 / 0.3048 ** 2, 'NIST SP 811, B.9: 1 footcandle = 10.763 91 lx, 1 lm/ft²'] },
  fL: { definition: [1 / (Math.PI * 0.3048 ** 2), 'NIST SP 811, B.9: 1 footlambert = 3.426 259 cd/m²'] },
  ppcm: { definition: [100, 'pixels per centimetre: 100 px/m'] },
  g: same('g', 'kg'),
  t: { mathjs: ['tonne', 'kg'], quantities: ['tonne', 'kg'] },
  lb: same('lb', 'kg'),
  oz: same('oz', 'kg'),
  s: same('s'),
  min: same('min', 's'),
  h: same('h', 's'),
  d: { mathjs: ['day', 's'], quantities: ['day', 's'] },
  A: same('A'),
  K: { mathjs: ['K', 'K'], quantities: ['degK', 'degK'] },
  '°C': { mathjs: ['degC', 'K'], quantities: ['tempC', 'tempK'] },
  mol: same('mol'),
  cd: same('cd'),
  lm: { quantities: ['lumen', 'cd*sr'], definition: [1, `${SI_9}, table 4: 1 lm = 1 cd sr`] },
  lx: { quantities: ['lux', 'cd*sr/m2'], definition: [1, `${SI_9}, table 4: 1 lx = 1 cd sr/m²`] },
  nit: { definition: [1, 'CIE S 017, luminance: the nit is an older name of the cd/m²'] },
  rad: same('rad'),
  '°': same('deg', 'rad'),
  '′': same('arcmin', 'rad'),
  '″': same('arcsec', 'rad'),
  sr: { quantities: ['sr', 'sr'], definition: [1, `${SI_9}, table 4: the coherent unit of solid angle`] },
  Hz: { mathjs: ['Hz', 's^-1'], quantities: ['Hz', '1/s'] },
  N: same('N', 'kg m/s^2', 'kg*m/s2'),
  Pa: same('Pa', 'kg/(m s^2)', 'kg/m*s2'),
  lbf: same('lbf', 'kg m/s^2', 'kg*m/s2'),
  J: same('J', 'kg m^2/s^2', 'kg*m2/s2'),
  Ws: { mathjs: ['W s', 'J'], quantities: ['W*s', 'J'] },
  Wh: same('Wh', 'J'),
  W: same('W', 'kg m^2/s^3', 'kg*m2/s3'),
  VA: same('VA', 'W'),
  V: same('V', 'kg m^2/(s^3 A)', 'kg*m2/s3*A'),
  Ω: same('ohm', 'kg m^2/(s^3 A^2)', 'kg*m2/s3*A2'),
  C: same('C', 'A s', 'A*s'),
  stop: { definition: [1, 'a unit of its own here: one doubling of the exposure (ISO 2720 counts EV so)'] },
  EV: { definition: [1, 'ISO 2720: one step of the exposure value is one doubling, a stop'] },
  px: { quantities: ['pixel', 'pixel'] },
  // js-quantities knows ppi and dpi but does not reduce them; pixels and dots per inch it does.
  ppi: { quantities: ['pixel/in', 'pixel/m'] },
  dpi: { quantities: ['dots/in', 'dots/m'] },
  lp: { definition: [1, 'ISO 12233: a line pair is one period of a pattern, a number'] },
  dpt: { definition: [1, 'ISO 13666: 1 dioptre = 1 m⁻¹'] },
  mired: { definition: [1e-6, 'CIE S 017: the reciprocal megakelvin, 10⁻⁶ K⁻¹'] },
  bit: { mathjs: ['b', 'b'], quantities: ['bit', 'bit'] },
  B: { mathjs: ['B', 'b'], quantities: ['B', 'bit'] },
  '%': { quantities: ['percent', ''] },
  '‰': { definition: [0.001, 'ISO 80000-1, of numbers: 1 ‰ = 0.001'] },
}

/** SI Brochure, 9th ed. with the resolution of the 27th CGPM (2022), table 7, as powers of ten. */
export const SI_PREFIXES: Readonly<Record<string, number>> = {
  Q: 30,
  R: 27,
  Y: 24,
  Z: 21,
  E: 18,
  P: 15,
  T: 12,
  G: 9,
  M: 6,
  k: 3,
  h: 2,
  da: 1,
  d: -1,
  c: -2,
  m: -3,
  µ: -6,
  u: -6,
  n: -9,
  p: -12,
  f: -15,
  a: -18,
  z: -21,
  y: -24,
  r: -27,
  q: -30,
}

/** IEC 80000-13, as powers of two. */
export const BINARY_PREFIXES: Readonly<Record<string, number>> = { Ki: 10, Mi: 20, Gi: 30, Ti: 40, Pi: 50, Ei: 60 }

export function prefixFactor(prefix: string): number | undefined {
  if (prefix === '') return 1
  const [ten, two] = [SI_PREFIXES[prefix], BINARY_PREFIXES[prefix]]
  // Written out, since 10 ** -6 and the like are not always the nearest number.
  return ten !== undefined ? Number(`1e${ten}`) : two !== undefined ? 2 ** two : undefined
}

const math = create(all ?? {})

/** What mathjs makes of a prefix and a unit, or undefined where it knows them not. */
export function byMathjs({ mathjs }: Reference, prefix = ''): number | undefined {
  if (!mathjs) return undefined
  const [name, coherent] = mathjs
  try {
    return math.unit(1, ascii(prefix) + name).toNumber(coherent)
  } catch {
    return undefined
  }
}

/** What js-quantities makes of a prefix and a unit, or undefined where it knows them not. */
export function byQuantities({ quantities }: Reference, prefix = ''): number | undefined {
  if (!quantities) return undefined
  const [name, coherent] = quantities
  try {
    const quantity = Qty(1, ascii(prefix) + name)
    return coherent === '' ? quantity.toBase().scalar : quantity.to(coherent).scalar
  } catch {
    return undefined
  }
}

const ascii = (prefix: string): string => (prefix === 'µ' ? 'u' : prefix)
