/** Why a clip takes no part in its squad's route. */
export type AsideReason =
  | 'clock-film'
  | 'edited-copy'
  | 'other-period'
  | 'unreadable'
  | 'by-teacher'
  | 'other-squad'
  | 'nobodys';
