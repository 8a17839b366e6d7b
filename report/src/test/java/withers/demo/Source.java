package withers.demo;

import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Pattern;

/** The sources of the scenario: who sends which kind of records, and how it writes its files. */
enum Source {
  VENDLEMOUTH_PATIENTS("vendlemouth-patients", ',', "\n", Style.ISO, 1, 1),
  PELLERWICK_PATIENTS("pellerwick-patients", ';', "\r\n", Style.DAY_DOT, 1, 1),
  CORVELSEA_PATIENTS("corvelsea-patients", '\t', "\n", Style.MONTH_SLASH, 1, 1),
  NETHERSAY_PATIENTS("nethersay-patients", ',', "\n", Style.DAY_SLASH, 3, 3),
  GARROWNESS_STAYS("garrowness-stays", ',', "\n", Style.ISO, 1, 1),
  HATHERSAND_MOVEMENTS("hathersand-movements", ';', "\r\n", Style.DAY_SLASH, 1, 1),
  ULVERSCAR_STAYS("ulverscar-stays", '\t', "\n", Style.MONTH_SLASH, 1, 1),
  TOLLBARROW_SALES("tollbarrow-sales", ';', "\n", Style.DAY_DOT, 1, 1),
  CORVELSEA_SALES("corvelsea-sales", '|', "\n", Style.ISO, 1, 1),
  COAST_REGISTER("coast-register", ',', "\n", Style.ISO, 0, 0),
  NORTHERN_REGISTER("northern-register", ';', "\n", Style.DAY_SLASH, 1, 1),
  INLAND_ACCOUNT("inland-account", '\t', "\n", Style.MONTH_SLASH, 2, 26),
  BRACKENSAY_REGISTER("brackensay-register", ',', "\n", Style.ISO, 1, Style.NOT_SENT),
  SKARNHOLME_SUPPLY("skarnholme-supply", ',', "\n", Style.ISO, 1, 1),
  LOST_AND_FOUND("lost-and-found", ',', "\n", Style.DAY_DOT, 0, 0);

  private static final Pattern DAY = Pattern.compile("^(\\d{4})-(\\d{2})-(\\d{2})$");

  private final String id;
  private final char delimiter;
  private final String newline;
  private final String datePattern;
  private final int[] daysBefore;

  /** Ways to write a day, and what marks a month without an export. */
  static final class Style {
    static final String ISO = "$1-$2-$3";
    static final String DAY_DOT = "$3.$2.$1";
    static final String DAY_SLASH = "$3/$2/$1";
    static final String MONTH_SLASH = "$2/$3/$1";
    static final int NOT_SENT = -1;

    private Style() {}
  }

  Source(String id, char delimiter, String newline, String datePattern, int... daysBefore) {
    this.id = id;
    this.delimiter = delimiter;
    this.newline = newline;
    this.datePattern = datePattern;
    this.daysBefore = daysBefore;
  }

  String id() {
    return id;
  }

  char delimiter() {
    return delimiter;
  }

  String newline() {
    return newline;
  }

  /** The day that this source's export of a round was made, or empty when it sent none. */
  Optional<LocalDate> exportDay(Round round) {
    int before = daysBefore[round.number() - 1];
    return before == Style.NOT_SENT
        ? Optional.empty()
        : Optional.of(round.asOf().minusDays(before));
  }

  /** The name of an export: its day, and the window that it covers if it is one. */
  String fileName(Round round, LocalDate exportDay) {
    String window = this == LOST_AND_FOUND ? "-" + windowStart(round) : "";
    return id + window + "-" + exportDay + ".csv";
  }

  /**
   * Whether this source puts a record into an export: one sends what changed, one sends what is
   * dated since its last export, the others send everything.
   */
  boolean exports(Row row, Optional<Row> before, Round round) {
    return switch (this) {
      case HATHERSAND_MOVEMENTS -> !before.equals(Optional.of(row));
      case LOST_AND_FOUND ->
          inWindow(row.get(Field.DAY), round) || inWindow(row.get(Field.REUNITED), round);
      default -> true;
    };
  }

  private static boolean inWindow(String day, Round round) {
    return !day.isEmpty()
        && day.compareTo(windowStart(round).toString()) >= 0
        && day.compareTo(round.asOf().toString()) <= 0;
  }

  private static LocalDate windowStart(Round round) {
    return Round.before(round)
        .map(last -> last.asOf().plusDays(1))
        .orElse(LocalDate.of(2026, 5, 1));
  }

  /** A day, written year-month-day, as this source writes it; other text stays. */
  String day(String isoDay) {
    return datePattern.equals(Style.ISO) ? isoDay : DAY.matcher(isoDay).replaceFirst(datePattern);
  }

  static Source of(String id) {
    for (Source source : values()) {
      if (source.id.equals(id)) {
        return source;
      }
    }
    throw new IllegalArgumentException("Expected a source of the scenario, but found " + id);
  }
}
