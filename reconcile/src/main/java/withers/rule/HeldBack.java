package withers.rule;

import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.Settled;
import withers.cases.Settlement.RightAsItIs;
import withers.custody.Cast;
import withers.finding.Finding;
import withers.settled.Basis;

/** Findings that somebody looked into and found right as they are, while they say the same. */
public record HeldBack(Cast cast) {

  /** Whether it is one. */
  public boolean isHeldBack(Finding finding) {
    return cast.settlements()
        .last(names(finding))
        .filter(cast.settlements()::isStanding)
        .filter(settled -> isStill(settled, finding))
        .isPresent();
  }

  private boolean isStill(Settled settled, Finding finding) {
    return settled.says() instanceof RightAsItIs then
        && new Basis(cast::verdict).isStill(then, finding);
  }

  /** What the follow-up may be called: an animal has as many anchors as it has chips. */
  public static Stream<CaseKey> names(Finding finding) {
    CaseKey key = finding.caseKey();
    Stream<CaseKey> byOthers =
        key.anchor() instanceof Anchor.Chip
            ? finding.chips().stream()
                .map(Anchor.Chip::new)
                .map(chip -> new CaseKey(key.rule(), chip, key.actor(), key.recordKey()))
            : Stream.empty();
    return Stream.concat(Stream.of(key), byOthers).distinct();
  }
}
