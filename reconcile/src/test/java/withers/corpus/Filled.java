package withers.corpus;

import java.util.List;

/**
 * Which fields a record states, with the share of such records in percent: keepers' records of
 * clinics and shelters, and registrations. Common practice, no source: many registries have little
 * more than a name and a phone.
 */
enum Filled {
  NAME_PHONE(10, 28, true, true, false, false),
  NAME_PHONE_EMAIL(13, 20, true, true, true, false),
  NAME_PHONE_ADDRESS(22, 14, true, true, false, true),
  ALL(48, 24, true, true, true, true),
  NAME_ADDRESS(4, 7, true, false, false, true),
  NAME_EMAIL(1, 3, true, false, true, false),
  NAME_ONLY(1, 3, true, false, false, false),
  NO_NAME(1, 1, false, true, false, true);

  private static final List<Filled> ALL_OF_THEM = List.of(values());

  private final int keepersShare;
  private final int registrationsShare;
  final boolean name;
  final boolean phone;
  final boolean email;
  final boolean address;

  Filled(
      int keepersShare,
      int registrationsShare,
      boolean name,
      boolean phone,
      boolean email,
      boolean address) {
    this.keepersShare = keepersShare;
    this.registrationsShare = registrationsShare;
    this.name = name;
    this.phone = phone;
    this.email = email;
    this.address = address;
  }

  static Filled ofKeeper(Dice dice) {
    return dice.weighted(ALL_OF_THEM, filled -> filled.keepersShare);
  }

  static Filled ofRegistration(Dice dice) {
    return dice.weighted(ALL_OF_THEM, filled -> filled.registrationsShare);
  }
}
