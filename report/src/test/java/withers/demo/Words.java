package withers.demo;

import java.util.Map;

/** Words for kinds and sexes that several organisations share. */
final class Words {

  static final Map<String, String> SPECIES_CAPITALS =
      Map.of("dog", "Dog", "cat", "Cat", "rabbit", "Rabbit", "ferret", "Ferret");

  static final Map<String, String> SPECIES_LATIN =
      Map.of("dog", "canine", "cat", "feline", "rabbit", "lagomorph", "ferret", "mustelid");

  static final Map<String, String> SPECIES_LETTERS =
      Map.of("dog", "D", "cat", "C", "rabbit", "R", "ferret", "F");

  static final Map<String, String> SEX_LETTERS = Map.of("female", "F", "male", "M");

  static final Map<String, String> SEX_BREEDER = Map.of("female", "bitch", "male", "dog");

  private Words() {}
}
