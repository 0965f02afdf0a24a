import { describe, expect, test } from 'vitest';
import { getFileRole } from '../../../src-core/intake/found-file.ts';

describe('what a file is taken for by its name', () => {
  test.each(['IMG_0412.MOV', 'a.mp4', 'x.HEIC', 'photo.jpeg', 'clip.webm', 'clip', 'a.b.mkv', '-.mp4'])(
    '%s is a clip',
    (name) => expect(getFileRole(name)).toBe('clip'),
  );

  test.each(['IMG_0412.AAE', '.DS_Store', '._IMG_0412.MOV', 'Thumbs.db', 'desktop.ini', 'a.XMP', '.mov'])(
    '%s goes beside clips, without a word',
    (name) => expect(getFileRole(name)).toBe('companion'),
  );

  test.each(['notes.docx', 'clips.zip', 'song.mp3', 'trailing.', 'clip.mov.part'])(
    '%s is reported and not read',
    (name) => expect(getFileRole(name)).toBe('other'),
  );
});
