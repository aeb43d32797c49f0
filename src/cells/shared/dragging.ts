import { signal } from '@lit-labs/signals'

/** Whether something is being dragged: drawings are coarser then, for the next frame to come in time. */
export const dragging = signal(false)
