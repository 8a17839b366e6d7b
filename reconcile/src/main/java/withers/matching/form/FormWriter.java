package withers.matching.form;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Writes normal forms as bytes, for {@link FormReader} to read. Of a word of a name only its text
 * is written, since the rest follows from it; what is put together from other parts (a street of
 * its core, a town of its words) is not written either.
 */
final class FormWriter {

  private final ByteWriter out = new ByteWriter();
  private final Map<String, Integer> words = new LinkedHashMap<>();

  private FormWriter() {}

  static byte[] write(FormedContact contact) {
    FormWriter writer = new FormWriter();
    writer.out.text(contact.nameKey());
    writer.form(contact.form());
    return writer.out.written();
  }

  private void form(NormalForm form) {
    out.text(form.organisation());
    out.text(form.name());
    out.number(form.phones().size());
    form.phones().forEach(this::phone);
    out.number(form.emails().size());
    form.emails().forEach(this::email);
    out.flag(form.address().isPresent());
    form.address().ifPresent(this::address);
    vocabulary(form);
    out.number(form.names().size());
    form.names().forEach(this::name);
  }

  private void phone(Phone phone) {
    out.number(phone.number());
    out.number(phone.digits());
    out.flag(phone.local());
    out.kind(phone.kind());
  }

  private void email(Email email) {
    out.text(email.mailbox());
    out.text(email.domain());
    out.text(email.tag());
    same(email.letters(), email.mailbox());
  }

  private void address(Address address) {
    out.texts(address.coreWords());
    same(address.core(), String.join(" ", address.coreWords()));
    same(address.street(), address.core());
    out.text(address.number());
    out.text(address.unit());
    out.text(address.postcode());
    out.texts(address.townWords());
    same(address.town(), String.join(" ", address.townWords()));
    out.text(address.country());
  }

  /** A text that often is the same as one that the reader knows already. */
  private void same(String text, String known) {
    boolean isKnown = text.equals(known);
    out.flag(isKnown);
    if (!isKnown) {
      out.text(text);
    }
  }

  /** The words of all names, each once; 0 stands for none. */
  private void vocabulary(NormalForm form) {
    words.put(NameWord.NONE.text(), 0);
    form.names().stream()
        .flatMap(name -> Stream.of(name.straight(), name.swapped()))
        .flatMap(FormWriter::words)
        .forEach(word -> words.putIfAbsent(word.text(), words.size()));
    out.texts(List.copyOf(words.keySet()).subList(1, words.size()));
  }

  private static Stream<NameWord> words(Reading reading) {
    Stream<NameWord> joined = Stream.of(reading.joinedGiven(), reading.joinedFamily());
    return Stream.of(
            reading.given().stream(), reading.either().stream(), reading.family().stream(), joined)
        .flatMap(some -> some);
  }

  private void name(PersonName name) {
    reading(name.straight());
    reading(name.swapped());
    out.kind(name.order());
    out.kind(name.generation());
    out.kind(name.sex());
    out.flag(name.wholeFamily());
  }

  private void reading(Reading reading) {
    several(reading.given());
    several(reading.either());
    several(reading.family());
    out.text(reading.particles());
    word(reading.joinedGiven());
    word(reading.joinedFamily());
  }

  private void several(List<NameWord> some) {
    out.number(some.size());
    some.forEach(this::word);
  }

  private void word(NameWord word) {
    out.number(words.getOrDefault(word.text(), 0));
  }
}
