package withers.corpus;

/**
 * Where somebody lives.
 *
 * @param place the country's way of writing addresses
 * @param flat its number, or empty for a house
 */
record Home(Place place, String town, String street, int number, String flat) {

  /** What makes two addresses one building. */
  String building() {
    return place.country() + "/" + town + "/" + street + "/" + number;
  }

  String postcode() {
    return place.postcode(town, street);
  }

  /** Street and number, without the flat. */
  String line() {
    return switch (place.line()) {
      case "first" -> number + " " + street;
      case "comma" -> street + ", " + number;
      default -> street + " " + number;
    };
  }

  Home flat(String other) {
    return new Home(place, town, street, number, other);
  }
}
