package withers.corpus;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import withers.corpus.Entry.WrittenPhone;

/** What happens to telephone numbers. */
final class PhoneChanges {
  private PhoneChanges() {}

  /** Another number of the same kind; the old one is gone. */
  static Entry renewed(Entry entry, Dice dice) {
    if (entry.phones().isEmpty()) {
      return entry;
    }
    boolean mobile = entry.phones().get(0).phone().mobile();
    return entry.phones(List.of(fresh(entry.person(), mobile, dice)));
  }

  private static WrittenPhone fresh(Person person, boolean mobile, Dice dice) {
    Phone phone = PhoneBook.number(person.country(), mobile, dice);
    return Clerk.phone(phone, Clerk.format(dice), person);
  }

  static Entry otherFormat(Entry entry, Dice dice) {
    PhoneFormat format = dice.one(List.of(PhoneFormat.values()));
    return entry.phones(
        entry.phones().stream()
            .map(written -> Clerk.phone(written.phone(), format, entry.person()))
            .toList());
  }

  /** A landline of one's own country as neighbours dial it. */
  static Entry withoutArea(Entry entry, Dice dice) {
    return entry.phones(
        entry.phones().stream()
            .map(
                written ->
                    isLocal(written.phone(), entry.person())
                        ? new WrittenPhone(written.phone(), written.phone().local())
                        : written)
            .toList());
  }

  private static boolean isLocal(Phone phone, Person person) {
    boolean fixed = !phone.mobile() || phone.trunk().isEmpty();
    return fixed && phone.country().equals(person.country());
  }

  /** One digit is another one, or two are transposed: it is somebody else's number now. */
  static Entry wrongDigit(Entry entry, Dice dice) {
    if (entry.phones().isEmpty() || entry.phones().get(0).phone().free() == 0) {
      return entry;
    }
    Phone phone = entry.phones().get(0).phone();
    int at = phone.local().length() - 1 - dice.below(phone.free());
    char digit = (char) ('0' + (phone.local().charAt(at) - '0' + 1 + dice.below(9)) % 10);
    String local = phone.local().substring(0, at) + digit + phone.local().substring(at + 1);
    Phone wrong =
        new Phone(
            phone.country(),
            phone.code(),
            phone.trunk(),
            phone.mobile(),
            phone.area(),
            local,
            phone.free());
    List<WrittenPhone> phones = new ArrayList<>(entry.phones());
    phones.set(0, Clerk.phone(wrong, Clerk.format(dice), entry.person()));
    return entry.phones(phones);
  }

  /** The other of mobile and landline, and not the one that was given elsewhere. */
  static Entry otherKind(Entry entry, Dice dice) {
    if (entry.phones().isEmpty()) {
      return entry;
    }
    boolean mobile = !entry.phones().get(0).phone().mobile();
    WrittenPhone own =
        entry.person().phones().stream()
            .filter(phone -> phone.mobile() == mobile)
            .map(phone -> Clerk.phone(phone, Clerk.format(dice), entry.person()))
            .findFirst()
            .orElseGet(() -> fresh(entry.person(), mobile, dice));
    return entry.phones(List.of(own));
  }

  /** A second number joins, in any order, in a field of its own or in the same one. */
  static Entry several(Entry entry, Dice dice) {
    if (entry.phones().isEmpty()) {
      return entry;
    }
    List<WrittenPhone> phones = new ArrayList<>(entry.phones().subList(0, 1));
    phones.add(fresh(entry.person(), dice.chance(50), dice));
    if (dice.chance(50)) {
      Collections.reverse(phones);
    }
    return entry.phones(dice.chance(35) ? inOneField(phones, dice) : phones);
  }

  private static List<WrittenPhone> inOneField(List<WrittenPhone> phones, Dice dice) {
    String between = dice.one(List.of(" / ", "; ", ", ", " or "));
    WrittenPhone first = phones.get(0);
    WrittenPhone second = phones.get(1);
    String both = first.text() + between + second.text();
    return List.of(new WrittenPhone(first.phone(), both), new WrittenPhone(second.phone(), ""));
  }

  /** Words of clerks around a number, and extensions. */
  static Entry remark(Entry entry, Dice dice) {
    String remark = dice.one(List.of(" (work)", " x12", " ext. 4", " mobile", " after 6pm"));
    return entry.phones(
        entry.phones().stream()
            .map(written -> new WrittenPhone(written.phone(), written.text() + remark))
            .toList());
  }
}
