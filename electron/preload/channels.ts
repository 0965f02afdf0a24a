/** The channels between a window and the main process; nothing else is ever sent or heard. */
export const CHANNELS = {
  request: 'routemark:request',
  cancel: 'routemark:cancel',
  event: 'routemark:event',
  dropped: 'routemark:dropped',
} as const;
