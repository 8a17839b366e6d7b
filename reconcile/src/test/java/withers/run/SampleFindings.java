package withers.run;

import java.util.List;
import java.util.Optional;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.fact.Species;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.Priority;
import withers.finding.Who;
import withers.id.RecordKey;

/** Findings for tests, which tell nothing but what their follow-ups are called by. */
final class SampleFindings {

  private SampleFindings() {}

  /** The finding of an animal's follow-up. */
  static Finding of(CaseKey key, List<ChipNumber> chips, Priority priority) {
    return new Finding(
        FindingKind.of(key.rule()),
        key.anchor(),
        chips,
        Species.DOG,
        Optional.empty(),
        key.actor(),
        Optional.of(new RecordKey(key.recordKey())),
        new Who.Nobody(),
        List.of(),
        List.of(),
        Finding.Certainty.STATED,
        priority,
        List.of(),
        Optional.empty());
  }
}
