import { html, type TemplateResult } from 'lit'
import type { AreaKind } from '../../cells/frame/area-shapes.ts'
import { frameWords, KIND_NAMES, METHODS } from '../../cells/frame/words.ts'

/** How each kind of area is measured off a frame, and by what source. */
export const frameMethods = (): TemplateResult => html`
  <section aria-label=${frameWords.methods}>
    <h2>${frameWords.methods}</h2>
    <dl>
      ${(Object.entries(METHODS) as [AreaKind, string][]).map(
        ([kind, method]) => html`<dt><b>${KIND_NAMES[kind]}</b></dt><dd>${method}</dd>`,
      )}
    </dl>
    <p class="quiet">${frameWords.caution}</p>
  </section>
`
