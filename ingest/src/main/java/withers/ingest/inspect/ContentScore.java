package withers.ingest.inspect;

import withers.ingest.profile.ColumnName;

/**
 * How well a column's cells fit a field, in bits, whatever its header says. The figures are our
 * judgement, common practice without a source.
 */
final class ContentScore {

  /** Cells that are something else: no header makes up for it. */
  static final double IMPOSSIBLE = -40;

  /** Share of cells from which on a column names organisations and nobody else. */
  private static final double ONLY = 0.9;

  /** An empty column can be anything that its header says. */
  private static final double EMPTY = -1.5;

  /** A second phone of one person is rarer than a second person. */
  private static final double FURTHER_COPY = -4;

  private final CellWords words;
  private final DayScore days;

  ContentScore(CellWords words, DayScore days) {
    this.words = words;
    this.days = days;
  }

  double of(Field field, Column column) {
    if (column.isEmpty()) {
      return empty(field);
    }
    double copies = FURTHER_COPY * field.copy();
    return copies + filled(field, column);
  }

  private static double empty(Field field) {
    boolean always =
        field.use() == Use.KEY
            || field.use() == Use.EXPORT_DATE
            || field.use() == Use.ANIMAL_ID
            || field.is(ColumnName.CHIP)
            || field.is(ColumnName.VISIT)
            || field.is(ColumnName.SOLD);
    return always ? IMPOSSIBLE : EMPTY - 2.5 * field.copy();
  }

  private double filled(Field field, Column column) {
    return switch (field.use()) {
      case KEY -> key(column);
      case ANIMAL_ID -> id(column) + (column.fill() < 0.5 ? -2 : 0);
      case PARTY_ID -> id(column);
      case CHIP -> chip(field, column);
      case ANIMAL_NAME -> oneWord(column) + (column.fill() > 0.6 ? 1 : -1);
      case ACCOUNT -> account(column);
      case WORD -> word(field, column);
      case DAY -> days.of(field, column);
      case EXPORT_DATE -> days.exportDate(column);
      case FULL_NAME -> fullName(field, column);
      case GIVEN_NAME, FAMILY_NAME -> oneWord(column);
      case PHONE -> graded(column.share(Shape.PHONE), 6);
      case EMAIL -> graded(column.share(Shape.EMAIL), 8);
      case ADDRESS -> address(field, column);
      case POSTCODE -> postcode(column);
      case TOWN -> town(column);
      case REGION, COUNTRY -> region(column);
      case ORGANISATION -> organisation(column) - (field.isMostlyAPerson() ? 6 : 0);
    };
  }

  /** Nearly all: the full score; some: a little; hardly any: it is something else. */
  private static double graded(double share, double most) {
    if (share >= 0.7) {
      return most;
    }
    return share >= 0.3 ? most / 3 : IMPOSSIBLE;
  }

  static boolean isUnique(Column column) {
    return column.distinct() == column.filled() && column.filled() == column.rows();
  }

  private static double key(Column column) {
    boolean isCode =
        column.share(Shape.CODE) >= 0.9
            && column.share(Shape.PHONE) < 0.5
            && column.share(Shape.ISO_CHIP) < 0.5;
    boolean nearlyUnique = column.fill() >= 0.98 && column.variety() >= 0.98;
    if (!isCode || !nearlyUnique) {
      return IMPOSSIBLE;
    }
    return isUnique(column) ? 6 : 2;
  }

  private static double id(Column column) {
    boolean isCode =
        column.share(Shape.CODE) >= 0.9 && column.share(Shape.PHONE) < 0.5 && !column.holdsChips();
    return isCode ? 2 : IMPOSSIBLE;
  }

  private static double chip(Field field, Column column) {
    double chips = column.chips();
    if (chips < 0.4) {
      return IMPOSSIBLE;
    }
    double score = column.share(Shape.ISO_CHIP) >= 0.5 ? 8 * chips : 3 * chips;
    if (field.is(ColumnName.SECOND_CHIP)) {
      return score + (column.fill() < 0.3 ? 3 : column.fill() < 0.6 ? -1 : -6);
    }
    if (field.is(ColumnName.CHIP)) {
      return score + (column.fill() > 0.7 ? 3 : column.fill() > 0.4 ? 0 : -4);
    }
    return score + (column.fill() > 0.95 ? 0 : -6) - 3;
  }

  private static double oneWord(Column column) {
    double one = column.share(Shape.ONE_WORD);
    double some = one + column.share(Shape.WORDS);
    if (some < 0.7) {
      return IMPOSSIBLE;
    }
    double manyNames = column.distinct() <= 3 && column.filled() > 20 ? -4 : 0;
    return manyNames + (one >= 0.7 ? 3 : one >= 0.4 ? 0 : -3);
  }

  private double fullName(Field field, Column column) {
    double named = column.share(Shape.WORDS) + column.share(Shape.COMMA_NAME);
    if (named + column.share(Shape.ONE_WORD) < 0.7) {
      return IMPOSSIBLE;
    }
    double score = named >= 0.6 ? 5 : named >= 0.3 ? 1 : -2;
    boolean organisations = column.share(CellWords.Topic.ORGANISATION, words) >= ONLY;
    return organisations ? score - (field.isMostlyAPerson() ? 3 : 6) : score;
  }

  private double organisation(Column column) {
    double organisations = column.share(CellWords.Topic.ORGANISATION, words);
    double named =
        column.share(Shape.WORDS) + column.share(Shape.ONE_WORD) + column.share(Shape.COMMA_NAME);
    if (named < 0.6) {
      return IMPOSSIBLE;
    }
    if (organisations >= ONLY) {
      return 5;
    }
    if (organisations > 0.2) {
      return -4; // people stand there too
    }
    return column.variety() < 0.3 && column.filled() > 20 && column.share(Shape.WORDS) > 0.5
        ? 2
        : -6;
  }

  private double account(Column column) {
    boolean isSomethingElse =
        column.holdsDays()
            || column.holdsChips()
            || column.share(Shape.PHONE) > 0.5
            || column.share(Shape.EMAIL) > 0.5
            || column.share(Shape.STREET) > 0.5;
    if (isSomethingElse) {
      return IMPOSSIBLE;
    }
    boolean repeats = column.variety() < 0.5 || column.filled() < 5;
    double organisations = column.share(CellWords.Topic.ORGANISATION, words) >= 0.4 ? 3 : 0;
    return organisations + (repeats ? 0 : -4);
  }

  private double word(Field field, Column column) {
    ColumnName name = field.column().orElseThrow();
    CellWords.Topic topic = CellWords.topic(name).orElseThrow();
    double known = column.share(topic, words);
    boolean isFew = column.distinct() <= 40;
    if (known < 0.3 || !isFew) {
      return name == ColumnName.SEX || !isFew || column.holdsDays() ? IMPOSSIBLE : -8;
    }
    double fit = known >= 0.8 ? 7 : 2;
    return fit + WordScore.of(name, column, words);
  }

  private static double address(Field field, Column column) {
    double streets = column.share(Shape.STREET);
    if (column.share(Shape.EMAIL) > 0.3
        || column.share(Shape.PHONE) > 0.5
        || column.holdsDays()
        || column.holdsChips()) {
      return IMPOSSIBLE;
    }
    return streets >= 0.6 ? 6 : streets >= 0.25 ? 2 : field.copy() > 0 ? -5 : -9;
  }

  private static double postcode(Column column) {
    double share = column.share(Shape.POSTCODE);
    if (share < 0.5 || column.holdsChips() || column.share(Shape.PHONE) > 0.6) {
      return IMPOSSIBLE;
    }
    boolean counts = isUnique(column) && column.rows() > 30;
    return share >= 0.8 ? (counts ? -2 : 2) : 0;
  }

  private double town(Column column) {
    double named = column.share(Shape.ONE_WORD) + column.share(Shape.WORDS);
    if (named < 0.7) {
      return IMPOSSIBLE;
    }
    double few = column.variety() < 0.5 ? 1 : column.filled() > 30 ? -3 : 0;
    return few - 4 * column.share(CellWords.Topic.ORGANISATION, words) - kind(column);
  }

  /** Words of animals are no places. */
  private double kind(Column column) {
    boolean isWord =
        column.share(CellWords.Topic.SPECIES, words) > 0.7
            || column.share(CellWords.Topic.SEX, words) > 0.7
            || column.share(CellWords.Topic.MOVEMENT, words) > 0.7;
    return isWord ? 10 : 0;
  }

  private double region(Column column) {
    double named = column.share(Shape.ONE_WORD) + column.share(Shape.WORDS);
    return named < 0.7 ? IMPOSSIBLE : -3 - kind(column) + (column.variety() < 0.3 ? 1 : -3);
  }
}
