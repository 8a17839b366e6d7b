package withers.corpus;

import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * A name as it is written.
 *
 * @param before a title, or empty
 * @param given first and middle names; empty when only the family is named
 * @param with what of a partner stands beside the given names ({@code & Joe}), or empty
 * @param join what stands between two family names
 * @param after an organisation, or empty
 */
record Names(
    String before,
    List<Written> given,
    String with,
    List<Written> family,
    String join,
    String after) {

  static final Names NONE = new Names("", List.of(), "", List.of(), " ", "");

  /**
   * @param whole whether more than an initial is written
   */
  record Written(Name name, String text, boolean whole) {
    Written text(String other) {
      return new Written(name, other, whole);
    }
  }

  Names given(List<Written> other) {
    return new Names(before, other, with, family, join, after);
  }

  Names family(List<Written> other) {
    return new Names(before, given, with, other, join, after);
  }

  Names before(String other) {
    return new Names(other, given, with, family, join, after);
  }

  Names with(String other) {
    return new Names(before, given, other, family, join, after);
  }

  Names join(String other) {
    return new Names(before, given, with, family, other, after);
  }

  Names after(String other) {
    return new Names(before, given, with, family, join, other);
  }

  /** All that is written, changed. */
  Names texts(UnaryOperator<String> change) {
    return new Names(
        change.apply(before),
        given.stream().map(name -> name.text(change.apply(name.text))).toList(),
        change.apply(with),
        family.stream().map(name -> name.text(change.apply(name.text))).toList(),
        join,
        change.apply(after));
  }

  Names capitals() {
    return texts(text -> text.toUpperCase(Locale.ROOT));
  }

  boolean isStated() {
    return !given.isEmpty() || !family.isEmpty();
  }

  String givenText() {
    String names = given.stream().map(Written::text).collect(Collectors.joining(" "));
    return (before + " " + names + " " + with).strip().replaceAll(" +", " ");
  }

  String familyText() {
    return family.stream().map(Written::text).collect(Collectors.joining(join)) + after;
  }
}
