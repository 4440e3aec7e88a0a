/** Sentences of how a learner gets better, in English. */
export const progressEn = {
  "progress.title": "How I am doing",
  "progress.next": "Practise next",
  "progress.next.none": "Nothing is due today. Choose any task you like.",
  "progress.for": "for: {title}",
  "progress.tripping": "Rules you still trip over",
  "progress.tripping.none": "None.",
  "progress.kept": "Rules you keep",
  "progress.kept.none": "None yet.",
  "progress.counts": "tripped over: {tripped}, kept: {kept}",
  "progress.goes": "What you did",
  "progress.outcome.met": "met",
  "progress.outcome.not-yet": "not yet met",
  "progress.outcome.cannot-say": "cannot be said",
  "progress.outcome.left": "left before the hand-in",
  "progress.print": "Print",
  "progress.file": "Save as a file",
  "progress.file-name": "my-practice.txt",
  "progress.practice-only":
    "This is about practice on a training bench. It is no certificate and no proof of what may be done on real work.",
} as const;
