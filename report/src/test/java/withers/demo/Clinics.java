package withers.demo;

import java.time.LocalDate;
import java.util.List;

/** An animal as a clinic's patient. */
final class Clinics {

  private static final List<Source> ALL =
      List.of(
          Source.VENDLEMOUTH_PATIENTS,
          Source.VENDLEMOUTH_PATIENTS,
          Source.VENDLEMOUTH_PATIENTS,
          Source.PELLERWICK_PATIENTS,
          Source.PELLERWICK_PATIENTS,
          Source.CORVELSEA_PATIENTS,
          Source.CORVELSEA_PATIENTS,
          Source.NETHERSAY_PATIENTS);

  private final Life life;

  Clinics(Life life) {
    this.life = life;
  }

  Source any() {
    return life.dice.pick(ALL);
  }

  /** The purchaser's digits in the chip numbers of that clinic. */
  static int purchaser(Source clinic) {
    return 10 + clinic.ordinal();
  }

  /** A patient's card, opened at the first visit. */
  Ledger.Entry card(Source clinic, Animal animal, LocalDate day, Person client) {
    return life.ledger
        .entry(clinic, "P" + (100_000 + life.number))
        .on(day)
        .put(animal)
        .put(Field.CLIENT, "C" + client.id())
        .put(Role.PERSON, client)
        .put(Field.VISIT, day)
        .put(Field.SCANNED, scanned(day))
        .saved();
  }

  /** Nine visits in ten begin with the reader. */
  private String scanned(LocalDate day) {
    return life.dice.permille(900) ? day.toString() : "";
  }

  /** A visit with the reader, and what it said. */
  static void scan(Ledger.Entry card, LocalDate day, String result) {
    card.on(day).put(Field.VISIT, day).put(Field.SCANNED, day).put(Field.SCAN, result).saved();
  }

  /** Visits about once a year from then on, each typed on its day. */
  void yearly(Ledger.Entry card, LocalDate first) {
    yearly(card, first, Round.last().asOf());
  }

  /** Visits about once a year up to a day. */
  void yearly(Ledger.Entry card, LocalDate first, LocalDate last) {
    LocalDate visit = life.dice.after(first, 200, 420);
    while (!visit.isAfter(last)) {
      Ledger.Entry.Typing typing = card.on(visit).put(Field.VISIT, visit);
      if (life.dice.permille(900)) {
        typing.put(Field.SCANNED, visit);
      }
      typing.saved();
      visit = life.dice.after(visit, 200, 420);
    }
  }
}
