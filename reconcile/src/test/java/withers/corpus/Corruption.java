package withers.corpus;

import java.util.List;

/**
 * What may happen to a record, with its shares: everyday ones are those of tuning, only fewer to a
 * record; the table of docs/matching.md.
 */
public enum Corruption {
  GIVEN_NAME_TYPED(5, 4, GivenNames::typed),
  FAMILY_NAME_TYPED(6, 7, FamilyNames::typed),
  GIVEN_NAME_HEARD(2, 3, GivenNames::heard),
  FAMILY_NAME_HEARD(4, 3, FamilyNames::heard),
  SHORT_FORM(11, 9, GivenNames::shortened),
  INITIALS(4, 5, GivenNames::initials),
  MIDDLE_NAME(7, 6, GivenNames::middle),
  COUPLE(3, 4, GivenNames::couple),
  PARTICLE(10, 12, FamilyNames::particle),
  DOUBLE_NAME_CUT(10, 9, FamilyNames::cut),
  DOUBLE_NAME_JOINED(4, 5, FamilyNames::joinedOtherwise),
  MARRIED(5, 6, FamilyNames::married),
  NAMES_SWAPPED(3, 4, WholeNames::swapped),
  TITLE(4, 3, WholeNames::title),
  ACCENTS_DROPPED(6, 5, WholeNames::withoutAccents),
  OTHER_SPELLING(7, 8, WholeNames::otherSpelling),
  OTHER_SCRIPT(2, 3, WholeNames::otherScript),
  CAPITALS(5, 4, WholeNames::capitals),
  FAMILY_ONLY(1, 1.5, WholeNames::familyOnly),
  ORGANISATION(1, 1.5, WholeNames::organisation),

  NEW_PHONE(9, 10, PhoneChanges::renewed),
  PHONE_FORMAT(10, 12, PhoneChanges::otherFormat),
  AREA_MISSING(3, 2, PhoneChanges::withoutArea),
  WRONG_DIGIT(4, 5, PhoneChanges::wrongDigit),
  OTHER_KIND_OF_PHONE(4, 5, PhoneChanges::otherKind),
  SEVERAL_PHONES(5, 6, PhoneChanges::several),
  PHONE_REMARK(2, 1, PhoneChanges::remark),

  NEW_EMAIL(7, 6, EmailChanges::renewed),
  EMAIL_TAG(1.5, 2, EmailChanges::tagged),
  EMAIL_CASE(3, 2, EmailChanges::otherCase),
  EMAIL_TYPED(2, 3, EmailChanges::typed),
  FAMILY_EMAIL(1.5, 1, EmailChanges::family),

  MOVED(9, 10, AddressChanges::moved),
  STREET_ABBREVIATED(8, 7, AddressChanges::abbreviated),
  FLAT_OTHERWISE(5, 6, AddressChanges::flat),
  ADDRESS_REORDERED(3, 3, AddressChanges::reordered),
  STREET_TYPED(3, 4, AddressChanges::typed),
  WRONG_POSTCODE(3, 2, AddressChanges::wrongPostcode),
  POSTCODE_MISSING(3, 4, AddressChanges::withoutPostcode),
  TOWN_ONLY(2, 2, AddressChanges::townOnly);

  static final List<Corruption> ALL = List.of(values());

  /** Those that leave a record as telling as it was: they may befall strangers' records, too. */
  static final List<Corruption> HARMLESS =
      List.of(
          GIVEN_NAME_TYPED,
          FAMILY_NAME_TYPED,
          SHORT_FORM,
          INITIALS,
          MIDDLE_NAME,
          TITLE,
          ACCENTS_DROPPED,
          CAPITALS,
          COUPLE,
          PHONE_FORMAT,
          SEVERAL_PHONES,
          STREET_ABBREVIATED,
          FLAT_OTHERWISE,
          POSTCODE_MISSING);

  private final double tuning;
  private final double heldOut;
  private final Change change;

  Corruption(double tuning, double heldOut, Change change) {
    this.tuning = tuning;
    this.heldOut = heldOut;
    this.change = change;
  }

  double weight(Mix mix) {
    return mix == Mix.HELD_OUT ? heldOut : tuning;
  }

  /** The record with this in it, or the same when there is nothing to do it to. */
  Entry apply(Entry entry, Dice dice) {
    return change.apply(entry, dice);
  }
}
