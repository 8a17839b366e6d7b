package withers.demo;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;

/** Builds the columns of one source, in the source's own words and styles. */
final class Columns {

  /** How a source writes phones: what goes for the three parts of a number. */
  static final String PHONE_BRACKETS = "($1) $2-$3";

  static final String PHONE_PLAIN = "$1$2$3";
  static final String PHONE_ABROAD = "+1 $1 $2 $3";
  static final String PHONE_DOTS = "$1.$2.$3";
  static final String PHONE_DASHES = "$1-$2-$3";

  private static final Pattern PHONE = Pattern.compile("^(\\d{3})-(\\d{3})-(\\d{4})$");
  private static final Pattern FIVE_GROUPS =
      Pattern.compile("^(\\d{3})(\\d{3})(\\d{3})(\\d{3})(\\d{3})$");
  private static final Pattern MARKS = Pattern.compile("\\p{M}");

  private final Source source;
  private final List<Column> columns = new ArrayList<>();
  private String phoneStyle = PHONE_DASHES;
  private UnaryOperator<String> spelling = UnaryOperator.identity();

  Columns(Source source) {
    this.source = source;
  }

  List<Column> list() {
    return List.copyOf(columns);
  }

  Columns phonesAs(String style) {
    phoneStyle = style;
    return this;
  }

  /** The source's program keeps no accents. */
  Columns withoutAccents() {
    spelling =
        text -> MARKS.matcher(Normalizer.normalize(text, Normalizer.Form.NFD)).replaceAll("");
    return this;
  }

  Columns text(String header, Field field) {
    return add(header, row -> row.get(field));
  }

  Columns day(String header, Field field) {
    return add(header, row -> source.day(row.get(field)));
  }

  /** A column of coded words; a word without a code stays as it is. */
  Columns word(String header, Field field, Map<String, String> codes) {
    return add(header, row -> codes.getOrDefault(row.get(field), row.get(field)));
  }

  /** A number in groups of three digits. */
  Columns groupedChip(String header, Field field) {
    return add(header, row -> FIVE_GROUPS.matcher(row.get(field)).replaceFirst("$1 $2 $3 $4 $5"));
  }

  Columns fullName(String header, Role role) {
    return person(header, role, Person::fullName);
  }

  Columns filedName(String header, Role role) {
    return person(header, role, Person::filedName);
  }

  Columns givenName(String header, Role role) {
    return person(header, role, Person::given);
  }

  Columns familyName(String header, Role role) {
    return person(header, role, Person::family);
  }

  Columns phone(String header, Role role) {
    return add(header, row -> styled(row.who(role).phone()));
  }

  Columns email(String header, Role role) {
    return add(header, row -> row.who(role).email());
  }

  Columns address(String street, String postcode, String town, Role role) {
    return person(street, role, Person::street)
        .person(postcode, role, Person::postcode)
        .person(town, role, Person::town);
  }

  private String styled(String phone) {
    return phoneStyle.equals(PHONE_DASHES) ? phone : PHONE.matcher(phone).replaceFirst(phoneStyle);
  }

  private Columns person(String header, Role role, Function<Person, String> part) {
    return add(header, row -> spelling.apply(part.apply(row.who(role))));
  }

  private Columns add(String header, Function<Row, String> cell) {
    columns.add(new Column(header, cell));
    return this;
  }
}
