import { html, nothing, type TemplateResult } from 'lit'
import type { Difference } from '../../worksheet/analysis/compare.ts'
import { parts as PART_TITLES } from '../../worksheet/analysis/words.ts'
import { revisionsWords as words } from './words.ts'

/** “Lens: 60 mm, then 80 mm”, ruled, under the name of its part. */
export function comparison(differences: readonly Difference[]): TemplateResult {
  if (differences.length === 0) return html`<p class="small" role="status">${words.same}</p>`
  const parts = [...new Set(differences.map(({ part }) => part))]
  return html`
    <div class="comparison">
      ${parts.map(
        (part) => html`
          <h4>${PART_TITLES[part]}</h4>
          <dl class=${part === 'formulas' ? 'formulas' : ''}>
            ${differences.filter((one) => one.part === part).map(difference)}
          </dl>
        `,
      )}
    </div>
  `
}

function difference({ label, was, is }: Difference): TemplateResult {
  const text =
    was === undefined
      ? html`<span class="quiet">${words.added}</span> ${is}`
      : is === undefined
        ? html`<span class="quiet">${words.removed}</span> ${was}`
        : html`<span class="was">${was}</span><span class="quiet">${words.later}</span>${is}`
  return html`<dt>${label}</dt><dd>${text ?? nothing}</dd>`
}
