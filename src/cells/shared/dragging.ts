import { signal } from '@lit-labs/signals'

/** Whether something is being dragged. Drawings are then computed coarser, so that the next frame is on time. */
export const dragging = signal(false)
