package withers.corpus;

import java.util.List;
import withers.matching.Verdict;

/** What was said of a pair, without the pair's contacts. */
record Judged(Kind kind, List<Corruption> corruptions, Left left, Verdict verdict) {

  static Judged of(Pair pair, Judge judge) {
    Verdict verdict = judge.verdict(pair.one(), pair.other());
    return new Judged(pair.kind(), pair.corruptions(), pair.left(), verdict);
  }

  boolean isOnePerson() {
    return kind.truth() == Truth.SAME_PERSON;
  }

  boolean isClear() {
    return left.reach(kind.truth()) == Reach.CLEAR;
  }
}
