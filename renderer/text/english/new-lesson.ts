/** Making a lesson, from nothing or as a copy. */
export const NEW_LESSON = {
  head: 'Begin a new lesson',
  text: 'It begins with stations, a rotation and a rubric that are all there to be changed.',
  title: 'Title',
  titleHint: 'Harbour circuit',
  className: 'Class',
  classHint: '9 Kelp',
  school: 'School',
  schoolHint: 'Cobble Quay School',
  date: 'Day',
  start: 'Period from',
  end: 'to',
  anotherPlace: 'Another folder…',
  noPlace: 'no folder yet',
  make: 'Make this lesson',
  copyShort: 'Copy for another day',
  copyOf: (title: string) => `A copy of ${title}`,
  copyText:
    'Plan, class and photos are copied; clips and marks are not. Its cards count as a new printing: print them anew.',
  makeCopy: 'Copy it',
} as const;
