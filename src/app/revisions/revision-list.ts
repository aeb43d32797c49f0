import { html, nothing, type TemplateResult } from 'lit'
import type { Difference } from '../../worksheet/analysis/compare.ts'

/** “Lens: 60 mm, then 80 mm”, ruled, under the name of its part. */
export function comparison(differences: readonly Difference[]): TemplateResult {
  if (differences.length === 0) return html`<p class="small" role="status">The two are the same.</p>`
  const parts = [...new Set(differences.map(({ part }) => part))]
  return html`
    <div class="comparison">
      ${parts.map(
        (part) => html`
          <h4>${part}</h4>
          <dl class=${part === 'Formulas' ? 'formulas' : ''}>
            ${differences.filter((one) => one.part === part).map(difference)}
          </dl>
        `,
      )}
    </div>
  `
}

function difference({ label, was, is }: Difference): TemplateResult {
  const words =
    was === undefined
      ? html`<span class="quiet">came:</span> ${is}`
      : is === undefined
        ? html`<span class="quiet">went:</span> ${was}`
        : html`<span class="was">${was}</span><span class="quiet">, then </span>${is}`
  return html`<dt>${label}</dt><dd>${words ?? nothing}</dd>`
}
