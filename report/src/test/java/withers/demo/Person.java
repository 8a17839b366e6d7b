package withers.demo;

/**
 * Somebody whom records name, invented. An organisation as a registry's contact is one too, with
 * its name as family name.
 *
 * @param id a number or short name that makes the client ids of the organisations
 */
record Person(
    String id,
    String given,
    String family,
    String phone,
    String email,
    String street,
    String postcode,
    String town) {

  static final Person NOBODY = new Person("", "", "", "", "", "", "", "");

  Person movedTo(Person elsewhere) {
    return new Person(
        id, given, family, phone, email, elsewhere.street, elsewhere.postcode, elsewhere.town);
  }

  Person withPhone(String newPhone) {
    return new Person(id, given, family, newPhone, email, street, postcode, town);
  }

  Person withEmail(String newEmail) {
    return new Person(id, given, family, phone, newEmail, street, postcode, town);
  }

  /** Somebody of whom only the name is known. */
  Person nameAlone() {
    return new Person(id, given, family, "", "", "", "", "");
  }

  Person named(String newGiven, String newFamily) {
    return new Person(id, newGiven, newFamily, phone, email, street, postcode, town);
  }

  /** The name in one piece, given name first. */
  String fullName() {
    return (given + " " + family).strip();
  }

  /** The name in one piece, family name first. */
  String filedName() {
    return given.isEmpty() ? family : family + ", " + given;
  }
}
