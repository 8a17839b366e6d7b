package withers.ingest.translate;

import java.time.LocalDate;
import java.util.Optional;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.ScanResult;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.PartyName;
import withers.ingest.profile.YesNo;

/** A clinic's patient: the chip put in, the last visit and who came with it. */
final class ClinicPatients {

  private ClinicPatients() {}

  static void translate(RowInHand row, Subject animal) {
    row.day(ColumnName.IMPLANTED)
        .ifPresent(day -> row.state(animal, Slot.IMPLANT, Optional.of(day), implanted(row)));
    row.day(ColumnName.VISIT)
        .ifPresent(
            day ->
                row.state(
                    animal,
                    Slot.VISIT,
                    Optional.of(day),
                    new Fact.Attended(row.party(PartyName.CLIENT))));
    scan(row, animal);
    if (row.word(ColumnName.DECEASED, YesNo.class).filter(YesNo.YES::equals).isPresent()) {
      Animals.died(row, animal, Optional.empty());
    }
  }

  private static Fact implanted(RowInHand row) {
    Party implanter = row.party(PartyName.IMPLANTER);
    return new Fact.Implanted(implanter instanceof Party.Unstated ? new Party.Own() : implanter);
  }

  private static void scan(RowInHand row, Subject animal) {
    Optional<LocalDate> day = row.day(ColumnName.SCANNED);
    Optional<ScanResult> result = row.word(ColumnName.SCAN_RESULT, ScanResult.class);
    if (day.isPresent() || result.isPresent()) {
      row.state(animal, Slot.SCAN, day, new Fact.Scanned(result.orElse(ScanResult.READ)));
    }
  }
}
