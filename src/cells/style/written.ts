import { css } from 'lit'

/** Fields of several lines, and fields for names and formulas: what a sheet to be filled in does without. */
export const written = css`
  textarea.field {
    display: block;
    min-block-size: 5.2rem;
    resize: vertical;
    field-sizing: content;
  }
  textarea.field.short {
    min-block-size: var(--target);
  }
  .mono {
    font-family: var(--mono);
    font-size: 0.92rem;
  }
`
