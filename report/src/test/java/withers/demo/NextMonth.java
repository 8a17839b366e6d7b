package withers.demo;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Two months of a record: in the first as it was typed by then, in the next the same, but for the
 * shares that came late, were corrected or changed.
 *
 * @param late whether of this animal nobody but registries sent anything in the first month
 */
record NextMonth(long seed, Shares shares, boolean late) implements Telling {

  private static final int PHONES = 8000;

  /** The day that a row is about: the first of these that it states. */
  private static final List<Field> DAYS =
      List.of(Field.SINCE, Field.SOLD, Field.IN_DAY, Field.DAY, Field.IMPLANTED, Field.VISIT);

  private static final Set<Source> REGISTRIES =
      EnumSet.of(
          Source.COAST_REGISTER,
          Source.NORTHERN_REGISTER,
          Source.INLAND_ACCOUNT,
          Source.BRACKENSAY_REGISTER);

  @Override
  public List<Row> rows(Ledger.Entry entry, Round round, LocalDate day) {
    Optional<Row> typed = entry.source().exportDay(Round.first()).flatMap(entry::asOn);
    Dice dice = Dice.of(seed, entry.source().id(), entry.key().hashCode());
    int times = dice.share(shares.repeated()) ? 2 : 1;
    return typed
        .flatMap(row -> in(round, row, entry.source(), dice))
        .map(row -> Collections.nCopies(times, row))
        .orElse(List.of());
  }

  private Optional<Row> in(Round round, Row row, Source source, Dice dice) {
    if (round.equals(Round.first())) {
      return Optional.of(row).filter(r -> !late || REGISTRIES.contains(source));
    }
    double draw = dice.fraction();
    if (draw < shares.corrected()) {
      return Optional.of(corrected(row));
    }
    return Optional.of(
        draw < shares.corrected() + shares.changed() ? changed(row, dice.below(PHONES)) : row);
  }

  private static Row corrected(Row row) {
    Field stated =
        DAYS.stream().filter(field -> !row.get(field).isEmpty()).findFirst().orElse(Field.BORN);
    LocalDate day = LocalDate.parse(row.get(stated)).minusDays(1);
    return row.overlaidBy(new Row(Map.of(stated, day.toString()), Map.of()));
  }

  /** Another phone; what names no person is corrected instead. */
  private static Row changed(Row row, int phone) {
    Person person = row.who(Role.PERSON);
    return person.given().isEmpty()
        ? corrected(row)
        : row.overlaidBy(
            new Row(Map.of(), Map.of(Role.PERSON, person.withPhone(People.phone(phone)))));
  }
}
