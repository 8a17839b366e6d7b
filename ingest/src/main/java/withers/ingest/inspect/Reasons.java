package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Says in words why a column was recognised. */
final class Reasons {

  private final CellWords words;

  Reasons(CellWords words) {
    this.words = words;
  }

  String of(Candidate candidate) {
    List<String> reasons = new ArrayList<>();
    if (candidate.header() > 1) {
      reasons.add("the header says so");
    } else if (candidate.header() < -1) {
      reasons.add("the header speaks of something else");
    }
    reasons.add(content(candidate.field(), candidate.column()));
    return String.join("; ", reasons);
  }

  private String content(Field field, Column column) {
    if (column.isEmpty()) {
      return "all cells are empty";
    }
    return switch (field.use()) {
      case CHIP -> chips(column);
      case DAY, EXPORT_DATE -> share(column, column.share(Shape.DAY), "are days");
      case PHONE -> share(column, column.share(Shape.PHONE), "look like phone numbers");
      case EMAIL -> share(column, column.share(Shape.EMAIL), "are e-mail addresses");
      case ADDRESS -> share(column, column.share(Shape.STREET), "look like streets with a number");
      case POSTCODE -> share(column, column.share(Shape.POSTCODE), "look like postcodes");
      case WORD -> known(field, column);
      case KEY, ANIMAL_ID, PARTY_ID ->
          say("%,d different codes in %,d cells", column.distinct(), column.filled());
      case ANIMAL_NAME, GIVEN_NAME, FAMILY_NAME ->
          share(column, column.share(Shape.ONE_WORD), "are one word");
      case FULL_NAME ->
          share(
              column,
              column.share(Shape.WORDS) + column.share(Shape.COMMA_NAME),
              "are two words or more");
      case ORGANISATION, ACCOUNT ->
          share(
              column,
              column.share(CellWords.Topic.ORGANISATION, words),
              "have a word for an organisation");
      case TOWN, REGION, COUNTRY ->
          say("%,d different words in %,d cells", column.distinct(), column.filled());
    };
  }

  private static String chips(Column column) {
    double iso = column.share(Shape.ISO_CHIP);
    return iso >= 0.5
        ? share(column, iso, "are 15-digit numbers that ISO 11784 allows")
        : share(column, column.chips(), "look like chip numbers");
  }

  private String known(Field field, Column column) {
    double known =
        field
            .column()
            .flatMap(CellWords::topic)
            .map(topic -> column.share(topic, words))
            .orElse(0.0);
    return share(column, known, "are words that we know for it");
  }

  private static String share(Column column, double share, String what) {
    return say("%d %% of %,d cells %s", (int) (100 * share), column.filled(), what);
  }

  private static String say(String text, Object... numbers) {
    return String.format(Locale.ROOT, text, numbers);
  }
}
