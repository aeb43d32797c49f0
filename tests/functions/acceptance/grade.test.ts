import { describe, expect, it } from 'vitest'
import fadgi2016 from '../../../shared/reference/fadgi-2016.json'
import fadgi2023 from '../../../shared/reference/fadgi-2023.json'
import iso from '../../../shared/reference/iso-19264-1.json'
import { colourCaution, gradeColour, gradeValue, gradingCaution } from '../../../src/functions/acceptance/grade.ts'
import { gradingOf, SCHEMES } from '../../../src/functions/acceptance/tables.ts'
import { ANGLE, LENGTH, NONE, PIXEL, SAMPLING } from '../../../src/units/index.ts'
import { advice } from '../call.ts'

const grade = (metric: string, value: number, scheme = 'FADGI', material = 'general') =>
  gradeValue(metric, value, NONE, scheme, material)
const PPI = 1 / 0.0254

describe('grading by a published table', () => {
  it('gives the best class whose limit the value meets; < excludes the limit', () => {
    expect([1.49, 1.5, 4.49, 5.99, 6].map((value) => grade('tone', value))).toEqual([
      '4 star',
      '3 star',
      '2 star',
      '1 star',
      'below',
    ])
    expect(grade('mtf10', 0.9)).toBe('3 star')
    expect(grade('mtf10', 0.901)).toBe('4 star')
    expect(grade('mtf10', 0.59)).toBe('below')
    expect(gradeValue('sampling', 300 * PPI, SAMPLING, 'FADGI', 'general')).toBe('3 star')
  })

  it('includes the limit where the table prints ≤ or ≥', () => {
    expect([2, 2.01, 5, 8, 8.01].map((value) => grade('tone', value, 'FADGI 2016'))).toEqual([
      '4 star',
      '3 star',
      '3 star',
      '2 star',
      'below',
    ])
    expect(gradeValue('sampling', 400 * PPI, SAMPLING, 'FADGI 2016', 'general')).toBe('4 star')
    expect(gradeValue('sampling', 399 * PPI, SAMPLING, 'FADGI 2016', 'general')).toBe('3 star')
    expect(grade('sharpening, greatest MTF', 1, 'FADGI 2016')).toBe('4 star')
    expect(grade('sharpening, greatest MTF', 1.1, 'FADGI 2016')).toBe('2 star')
  })

  it('counts a computed value on the limit as on it', () => {
    expect(grade('tone', 0.1 + 0.2 + 1.7, 'FADGI 2016')).toBe('4 star')
    expect(grade('tone', 0.1 + 0.2 + 1.2 - 1e-15, 'FADGI 2023')).toBe('3 star')
  })

  it('takes an error of either sign by its size, and a gain between two limits', () => {
    expect(grade('tone', -2)).toBe('3 star')
    expect(gradeValue('skew', -0.01, ANGLE, 'FADGI 2016', 'general')).toBe('4 star')
    expect(gradeValue('skew', -0.02, ANGLE, 'FADGI 2016', 'general')).toBe('3 star')
    expect(grade('gain highlights', 0.75, 'ISO 19264-1')).toBe('B')
    expect(grade('gain highlights', 1.35, 'ISO 19264-1')).toBe('below')
  })

  it('skips a class that the table leaves out', () => {
    expect(grade('colour mean', 7, 'FADGI 2016', 'bound volumes: rare and special materials')).toBe('2 star')
    expect(grade('colour mean', 9, 'FADGI 2016', 'bound volumes: rare and special materials')).toBe('below')
    expect(grade('colour mean', 9, 'FADGI 2016', 'bound volumes: general collections')).toBe('1 star')
  })

  it('does not mind capitals, spaces and signs', () => {
    expect(grade(' Colour  Mean ', 1.9, 'fadgi', 'General')).toBe('4 star')
    const film = (material: string) => gradeValue('sampling', 3100 * PPI, SAMPLING, 'FADGI 2016', material)
    expect(film('photographic transparencies 35 mm to 4×5 in')).toBe('3 star')
    expect(film('Photographic Transparencies: 35mm to 4”x5”')).toBe('3 star')
    expect(gradeValue('colour channel misregistration', 0.4, PIXEL, 'FADGI 2016', 'newspapers')).toBe('3 star')
  })

  it('names the newest edition where none is named', () => {
    for (const value of [1.4, 2.9, 4.4, 7])
      expect(grade('tone', value, 'FADGI')).toBe(grade('tone', value, 'FADGI 2023'))
  })

  it('says what the table holds when asked for what it does not', () => {
    expect(() => grade('tone', 1, 'DIN')).toThrow('"FADGI 2023", "FADGI 2016", "ISO 19264-1"')
    expect(() => grade('tone', 1, 'FADGI', 'maps')).toThrow('"general"')
    expect(() => grade('tone', 1, 'FADGI 2016', 'maps')).toThrow('"newspapers"')
    expect(() => grade('tone', 1, 'FADGI 2016', 'maps')).not.toThrow('grade it by')
    expect(() => grade('gloss', 1)).toThrow('"tone"')
    expect(() => gradeValue('sampling', 400, NONE, 'FADGI', 'general')).toThrow('in ppi')
    expect(() => gradeValue('tone', 1, LENGTH, 'FADGI', 'general')).toThrow('a plain number')
    expect(SCHEMES).toEqual(['FADGI 2023', 'FADGI 2016', 'ISO 19264-1'])
  })
})

describe('an edition of which few tables were found', () => {
  const BOUND = 'bound volumes: general collections'

  it('refuses every other original, and offers the edition that has it', () => {
    const others = Object.keys(fadgi2016.materials).filter((material) => material !== 'general' && material !== BOUND)
    expect(others.length).toBeGreaterThan(10)
    for (const material of others)
      for (const scheme of ['FADGI', 'FADGI 2023'])
        expect(() => grade('mtf10', 0.9, scheme, material), material).toThrow(
          `"${material}", which the FADGI 2023 table does not have. Name one that it has: "general", or grade it by "FADGI 2016", which has it.`,
        )
  })

  it('grades the one that was found by its own name, and says whose limits are used', () => {
    for (const metric of ['tone', 'noise', 'uniformity']) {
      expect(gradingCaution(metric, 'FADGI', BOUND)).toContain(`They are the limits for "${BOUND}"`)
      expect(gradingCaution(metric, 'FADGI 2023', 'general')).toContain('those for other originals were not found')
    }
    expect(grade('tone', 2, 'FADGI 2023', BOUND)).toBe(grade('tone', 2, 'FADGI 2023', 'general'))
    expect(gradingCaution('tone', 'ISO 19264-1', 'general')).not.toContain('They are the limits for')
  })
})

describe('where a limit was read', () => {
  it('is said beside the answer, unless it was the document itself', () => {
    expect(gradingCaution('tone', 'FADGI 2016', 'general')).toBeUndefined()
    expect(gradingCaution('tone', 'FADGI', 'general')).toContain('published comparison')
    expect(gradingCaution('uniformity', 'FADGI 2023', 'general')).toContain('from memory')
    expect(gradingCaution('tone', 'A, B; tone: 1, 2', 'general')).toBeUndefined()
    expect(colourCaution('ISO 19264-1', 'general')).toContain('ISO 19264-1')
    expect(advice('grade', 'tone', 1, 'FADGI 2023', 'general')).toContain('Check')
    expect(advice('grade_colour', [1], 'FADGI 2016', 'general')).toBeUndefined()
  })
})

describe('the class of a target’s colour', () => {
  it('is the worst over all colour metrics of the table', () => {
    const patches = [...Array.from({ length: 23 }, () => 1), 15.2]
    expect(grade('colour mean', 38.2 / 24, 'ISO 19264-1')).toBe('A')
    expect(gradeColour(patches, 'ISO 19264-1', 'general')).toBe('below')
    expect(gradeColour([1, 1, 9.9], 'ISO 19264-1', 'general')).toBe('A')
    expect(gradeColour([1, 1, 10.1], 'ISO 19264-1', 'general')).toBe('B')
  })

  it('is that of the mean where the table limits nothing else', () => {
    expect(gradeColour([1, 1, 10.9], 'FADGI 2016', 'general')).toBe('3 star')
    expect(gradeColour([1, 3], 'fine, fair; colour mean: 2, 4', 'general')).toBe('fine')
  })

  it('needs a table that grades colour, in plain numbers', () => {
    expect(() => gradeColour([1], 'fine, fair; tone: 2, 4', 'general')).toThrow('"colour mean"')
    expect(() => gradeColour([1], 'fine, fair; colour mean: 2 mm, 4 mm', 'general')).toThrow('no unit')
  })
})

describe('grading by the studio’s own table', () => {
  const own = 'fine, fair, draft; tone: 2, 3, 4; uniformity: 3 %, 5 %, 8 %; sampling: >= 400 ppi, 300 ppi, 200 ppi'

  it('reads classes, limits and units from the text', () => {
    expect(grade('tone', -3, own)).toBe('fair')
    expect(grade('uniformity', 0.081, own)).toBe('below')
    expect(gradeValue('sampling', 305 * PPI, SAMPLING, own, '')).toBe('fair')
  })

  it('reads the signs', () => {
    expect([2, 3].map((value) => grade('tone', value, 'A, B; tone: < 2, 3'))).toEqual(['B', 'below'])
    expect([2, 3].map((value) => grade('tone', value, 'A, B; tone: ≤2, 3'))).toEqual(['A', 'B'])
    expect([2, 3].map((value) => grade('tone', value, 'A, B; tone: > 2, 1'))).toEqual(['B', 'A'])
  })

  it('says what cannot be read', () => {
    expect(() => grade('gloss', 1, own)).toThrow('"tone", "uniformity", "sampling"')
    expect(() => grade('tone', 1, 'A, B; tone: 2')).toThrow('1 limits for 2 classes')
    expect(() => grade('tone', 1, 'A, B; tone 2, 3')).toThrow('no colon')
    expect(() => grade('tone', 1, 'A; tone: two')).toThrow('cannot be read')
    expect(() => grade('tone', 1, 'A, B; tone: 2, 3 mm')).toThrow('one kind of unit')
    expect(() => gradeValue('sampling', 305, NONE, own, '')).toThrow('in ppi')
    expect(() => grade('tone', 1, '; tone: 2')).toThrow('best first')
  })
})

describe('the published tables', () => {
  const TABLES = [fadgi2016, fadgi2023, iso] as unknown as readonly {
    scheme: string
    classes: string[]
    source: string
    sources: Record<string, unknown>
    metrics: Record<string, unknown>
    materials: Record<string, { limits: Record<string, (string | null)[]>; sources?: Record<string, string[]> }>
  }[]
  const rows = TABLES.flatMap((table) =>
    Object.entries(table.materials).flatMap(([material, { limits }]) =>
      Object.entries(limits).map(([metric, texts]) => ({ table, material, metric, texts })),
    ),
  )

  it('give every limit a source that is described', () => {
    for (const { scheme, source, sources, materials } of TABLES) {
      expect(Object.keys(sources), scheme).toContain(source)
      for (const material of Object.values(materials))
        for (const [metric, own] of Object.entries(material.sources ?? {})) {
          expect(own, metric).toHaveLength((material.limits[metric] as unknown[]).length)
          for (const one of own) expect(Object.keys(sources), metric).toContain(one)
        }
    }
  })

  it('describe every metric, and can be read to the last limit', () => {
    for (const { table, material, metric, texts } of rows) {
      expect(Object.keys(table.metrics), metric).toContain(metric)
      expect(texts, metric).toHaveLength(table.classes.length)
      expect(gradingOf(metric, table.scheme, material).limits, `${table.scheme}, ${material}, ${metric}`).toHaveLength(
        table.classes.length,
      )
    }
  })

  it('never ask more of a lesser class', () => {
    for (const { table, material, metric } of rows) {
      const { limits } = gradingOf(metric, table.scheme, material)
      const given = limits.filter((limit) => limit !== null)
      given.slice(1).forEach((limit, i) => {
        const better = given[i] as (typeof given)[number]
        const upper = (of: typeof limit) => of.most ?? of.below ?? Number.POSITIVE_INFINITY
        const lower = (of: typeof limit) => of.least ?? of.above ?? Number.NEGATIVE_INFINITY
        expect(upper(limit), `${material}, ${metric}`).toBeGreaterThanOrEqual(upper(better))
        expect(lower(limit), `${material}, ${metric}`).toBeLessThanOrEqual(lower(better))
      })
    }
  })
})
