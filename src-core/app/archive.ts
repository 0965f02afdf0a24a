export {
  type ArchiveManifest,
  type ArchiveProblem,
  buildManifestText,
  findUnsafeName,
  isSafePath,
  MANIFEST_NAME,
  parseManifest,
} from '../lesson-file/archive-manifest.ts';
