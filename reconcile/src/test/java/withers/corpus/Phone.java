package withers.corpus;

/**
 * A telephone number.
 *
 * @param country where it belongs, ISO 3166-1 alpha-2
 * @param trunk what is dialled before the area code within the country; may be empty
 * @param free how many of its last digits are free within the range that is kept for fiction
 */
record Phone(
    String country,
    String code,
    String trunk,
    boolean mobile,
    String area,
    String local,
    int free) {

  String key() {
    return "+" + code + area + local;
  }
}
