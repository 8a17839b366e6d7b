package withers.ingest.answers;

import withers.cases.Answered;
import withers.ingest.translate.Reject;

/** What a row of a sheet that came back says. */
sealed interface Heard {

  /** Nothing was filled in. */
  record Nothing() implements Heard {}

  /** An answer. */
  record Answer(Answered says) implements Heard {}

  /** Something that can't be taken. */
  record Refused(Reject reject) implements Heard {}
}
