import { css } from 'lit'

/** The page of an open sheet: paper on a grey ground, the whole width of a phone. */
export const sheetStyle = css`
  main {
    max-inline-size: 1560px;
    margin: 16px 24px 0;
    padding: 4px 32px 28px;
    border: 1px solid var(--hair);
  }
  /* It takes the focus where another face is turned to, and is no control. */
  main:focus-visible {
    outline: none;
  }
  main.stand {
    max-inline-size: none;
    margin: 0;
    padding: 0;
    border: 0;
  }
  .stand > :not(stand-view, .unseen) {
    display: block;
    margin-inline: clamp(16px, 3vw, 32px);
  }
  main:not(.fill) .keys {
    margin-block-start: 1.4rem;
  }
  @media (min-width: 1608px) {
    main {
      margin-inline: auto;
    }
  }
  @media (max-width: 1179px) {
    main {
      margin: 12px 12px 0;
      padding: 0 24px 24px;
    }
  }
  @media (max-width: 40rem) {
    main {
      margin: 0;
      padding: 8px 16px 20px;
      border: 0;
    }
    /* Its head is then one row. */
    main.typing {
      padding-block-start: 58px;
    }
    main.stand.typing {
      padding-block-start: 72px;
    }
  }
`
