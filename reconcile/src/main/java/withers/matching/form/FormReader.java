package withers.matching.form;

import java.util.List;
import java.util.Optional;

/** Reads what {@link FormWriter} wrote. */
final class FormReader {
  private static final Phone.Kind[] PHONES = Phone.Kind.values();
  private static final PersonName.Order[] ORDERS = PersonName.Order.values();
  private static final PersonName.Generation[] GENERATIONS = PersonName.Generation.values();
  private static final PersonName.Sex[] SEXES = PersonName.Sex.values();

  private final ByteReader in;
  private final NameWords names;
  private List<NameWord> words = List.of();

  private FormReader(byte[] bytes, NameWords names) {
    this.in = new ByteReader(bytes);
    this.names = names;
  }

  /**
   * @param names makes the words of names of their texts
   */
  static FormedContact read(byte[] bytes, NameWords names) {
    FormReader reader = new FormReader(bytes, names);
    String nameKey = reader.in.text();
    return new FormedContact(reader.form(), nameKey);
  }

  private NormalForm form() {
    String organisation = in.text();
    String name = in.text();
    List<Phone> phones = in.several(this::phone);
    List<Email> emails = in.several(this::email);
    Optional<Address> address = in.flag() ? Optional.of(address()) : Optional.empty();
    words = in.several(() -> names.of(in.text()));
    return new NormalForm(in.several(this::name), organisation, name, phones, emails, address);
  }

  private Phone phone() {
    return new Phone(in.number(), in.count(), in.flag(), in.kind(PHONES));
  }

  private Email email() {
    String mailbox = in.text();
    return new Email(mailbox, in.text(), in.text(), same(mailbox));
  }

  private Address address() {
    List<String> coreWords = in.texts();
    String core = same(String.join(" ", coreWords));
    String street = same(core);
    String number = in.text();
    String unit = in.text();
    String postcode = in.text();
    List<String> townWords = in.texts();
    String town = same(String.join(" ", townWords));
    return new Address(street, core, coreWords, number, unit, postcode, town, townWords, in.text());
  }

  private String same(String known) {
    return in.flag() ? known : in.text();
  }

  private PersonName name() {
    return new PersonName(
        reading(), reading(), in.kind(ORDERS), in.kind(GENERATIONS), in.kind(SEXES), in.flag());
  }

  private Reading reading() {
    return new Reading(
        in.several(this::word),
        in.several(this::word),
        in.several(this::word),
        in.text(),
        word(),
        word());
  }

  private NameWord word() {
    int number = in.count();
    return number == 0 ? NameWord.NONE : words.get(number - 1);
  }
}
