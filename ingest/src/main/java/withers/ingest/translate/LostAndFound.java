package withers.ingest.translate;

import java.time.LocalDate;
import java.util.Optional;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.PartyName;
import withers.ingest.profile.Report;

/** A report about an animal: lost, found, or back with its people. */
final class LostAndFound {

  private LostAndFound() {}

  static void translate(RowInHand row, Subject animal) {
    Optional<Report> report = row.word(ColumnName.REPORT_TYPE, Report.class);
    Optional<LocalDate> day = row.day(ColumnName.REPORTED);
    if (report.isEmpty()) {
      row.reject(
          Reject.Code.WORD_MISSING,
          ColumnName.REPORT_TYPE,
          "Expected what is reported, but found nothing");
    } else if (day.isEmpty()) {
      row.reject(
          Reject.Code.DAY_MISSING,
          ColumnName.REPORTED,
          "Expected the day of the report, but found none");
    } else {
      state(row, animal, report.get(), day);
    }
  }

  private static void state(RowInHand row, Subject animal, Report report, Optional<LocalDate> day) {
    Optional<LocalDate> reunited = row.day(ColumnName.REUNITED);
    switch (report) {
      case LOST ->
          row.state(animal, Slot.REPORT, day, new Fact.Lost(row.party(PartyName.REPORTER)));
      case FOUND -> row.state(animal, Slot.REPORT, day, new Fact.Found(holder(row)));
      case REUNITED -> reunited = reunited.or(() -> day);
    }
    if (reunited.isPresent()) {
      row.state(animal, Slot.REUNION, reunited, new Fact.Reunited());
    }
  }

  private static Party holder(RowInHand row) {
    Party holder = row.party(PartyName.HOLDER);
    return holder instanceof Party.Unstated ? row.party(PartyName.REPORTER) : holder;
  }
}
