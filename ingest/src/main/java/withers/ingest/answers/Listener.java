package withers.ingest.answers;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.answers.AnswerColumn;
import withers.cases.Answered;
import withers.cases.CaseKey;
import withers.cases.Outcome;
import withers.ingest.answers.AnswerRow.RefusedException;
import withers.ingest.translate.Reject.Code;
import withers.text.Remarks;

/**
 * Understands the rows of sheets that came back.
 *
 * @param given the day of answers that state none
 * @param today no answer is of a later day
 */
record Listener(KnownFollowUps known, Optional<LocalDate> given, LocalDate today) {

  /** Nobody is asked again later than so many days after the answer. */
  private static final int LATEST_AGAIN = 366;

  private static final int LENGTH_OF_DAY = 10;

  /** What a list's last column tells: whose list it is, and the day that its run judged. */
  private record OfList(String organisation, Optional<LocalDate> day) {
    static OfList read(String cell) {
      int blank = cell.indexOf(' ');
      return blank < 0
          ? new OfList(cell, Optional.empty())
          : new OfList(cell.substring(0, blank), day(cell.substring(blank + 1)));
    }

    private static Optional<LocalDate> day(String run) {
      try {
        return run.length() < LENGTH_OF_DAY
            ? Optional.empty()
            : Optional.of(LocalDate.parse(run.substring(0, LENGTH_OF_DAY)));
      } catch (DateTimeException noRun) {
        return Optional.empty();
      }
    }
  }

  Heard hear(AnswerRow row) {
    if (!row.tellsAnything()) {
      return new Heard.Nothing();
    }
    try {
      return new Heard.Answer(answer(row));
    } catch (RefusedException refused) {
      return new Heard.Refused(refused.reject());
    }
  }

  private Answered answer(AnswerRow row) throws RefusedException {
    OfList list = OfList.read(row.text(AnswerColumn.LIST));
    CaseKey key = followUp(row, list.organisation);
    Optional<LocalDate> stated = row.day(AnswerColumn.ON);
    LocalDate day = day(row, stated, list.day);
    Optional<Outcome> outcome = outcome(row, stated.isPresent());
    Optional<LocalDate> again = row.day(AnswerColumn.AGAIN);
    requireAfter(day, again, row);
    return new Answered(
        key,
        day,
        list.day,
        outcome,
        again,
        row.word(AnswerColumn.CHANNEL, one -> one.channelOf(row.text(AnswerColumn.CHANNEL))),
        role(row));
  }

  private CaseKey followUp(AnswerRow row, String organisation) throws RefusedException {
    List<CaseKey> named = known.named(row.text(AnswerColumn.REFERENCE));
    if (named.isEmpty()) {
      throw row.refused(
          Code.FOLLOW_UP_UNKNOWN,
          AnswerColumn.REFERENCE,
          "Expected the reference of a follow-up that a list had, but found another: see that it is whole; what stands below \"To look at\" is told to the coordinator");
    }
    List<CaseKey> own =
        named.stream()
            .filter(key -> organisation.isEmpty() || key.actor().value().equals(organisation))
            .toList();
    if (own.size() != 1) {
      throw row.refused(
          Code.OTHER_LIST,
          AnswerColumn.LIST,
          "Expected the list of the organisation whose follow-up this is, but found another or none: put the row into that organisation's sheet");
    }
    return own.get(0);
  }

  private LocalDate day(AnswerRow row, Optional<LocalDate> stated, Optional<LocalDate> listed)
      throws RefusedException {
    LocalDate day =
        stated
            .or(() -> given)
            .or(() -> listed)
            .orElseThrow(
                () ->
                    row.refused(
                        Code.DAY_MISSING,
                        AnswerColumn.ON,
                        "Expected a day, but found none here nor that of a list: fill it in, or give --export-date"));
    LocalDate last = latest(listed);
    if (day.isAfter(last) || listed.filter(day::isBefore).isPresent()) {
      throw row.refused(
          Code.DAY_REFUSED,
          AnswerColumn.ON,
          "Expected a day from that of the list%s to %s, but found %s: see that the year is right"
              .formatted(listed.map(one -> ", " + one + ",").orElse(""), last, day));
    }
    return day;
  }

  /** A list may be of a day to come, where records are: its answers come after it. */
  private LocalDate latest(Optional<LocalDate> listed) {
    return listed
        .filter(day -> day.isAfter(today))
        .map(day -> day.plusDays(LATEST_AGAIN))
        .orElse(today);
  }

  private static Optional<Outcome> outcome(AnswerRow row, boolean hasDay) throws RefusedException {
    Optional<Outcome> outcome =
        row.word(AnswerColumn.OUTCOME, one -> one.outcomeOf(row.text(AnswerColumn.OUTCOME)));
    boolean isAttempt = hasDay && row.text(AnswerColumn.CHANNEL).isEmpty();
    return outcome.isEmpty() && isAttempt ? Optional.of(Outcome.TRIED) : outcome;
  }

  private static void requireAfter(LocalDate day, Optional<LocalDate> again, AnswerRow row)
      throws RefusedException {
    if (again
        .filter(one -> !one.isAfter(day) || one.isAfter(day.plusDays(LATEST_AGAIN)))
        .isPresent()) {
      throw row.refused(
          Code.DAY_REFUSED,
          AnswerColumn.AGAIN,
          "Expected a day within a year after the answer of %s, but found %s: see that the year is right"
              .formatted(day, again.get()));
    }
  }

  private static String role(AnswerRow row) throws RefusedException {
    String role = row.text(AnswerColumn.BY);
    if (!role.isEmpty() && !Remarks.isRole(role)) {
      throw row.refused(
          Code.ROLE_REFUSED,
          AnswerColumn.BY,
          "Expected a role of up to 40 letters such as \"front desk\", but found something else: details of people don't belong there");
    }
    return role;
  }
}
