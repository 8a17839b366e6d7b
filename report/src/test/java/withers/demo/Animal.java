package withers.demo;

import java.time.LocalDate;
import java.util.List;

/** An animal as staff see it. */
record Animal(int number, String chip, String name, String species, String sex, LocalDate born) {

  private static final List<String> NAMES =
      List.of(
          "Acorn",
          "Amber",
          "Apricot",
          "Barley",
          "Basil",
          "Biscuit",
          "Bracken",
          "Bramble",
          "Button",
          "Cinder",
          "Clove",
          "Clover",
          "Comet",
          "Cricket",
          "Dandelion",
          "Dumpling",
          "Ember",
          "Fennel",
          "Fern",
          "Fidget",
          "Flint",
          "Gingersnap",
          "Hazel",
          "Heather",
          "Holly",
          "Inky",
          "Jasper",
          "Juniper",
          "Kipper",
          "Larch",
          "Maple",
          "Marzipan",
          "Mistral",
          "Mochi",
          "Moss",
          "Muffin",
          "Nettle",
          "Nutmeg",
          "Olive",
          "Orzo",
          "Paprika",
          "Pebble",
          "Pepper",
          "Pickle",
          "Pippin",
          "Poppy",
          "Puddle",
          "Quince",
          "Raisin",
          "Rusty",
          "Saffron",
          "Sesame",
          "Sorrel",
          "Sprocket",
          "Sumac",
          "Tansy",
          "Teasel",
          "Thistle",
          "Tofu",
          "Truffle",
          "Tumble",
          "Umber",
          "Velvet",
          "Waffle",
          "Wicket",
          "Willow",
          "Yarrow",
          "Zephyr");

  static Animal of(Dice dice, int number, String chip, LocalDate born) {
    int kind = dice.below(100);
    String species = kind < 52 ? "dog" : kind < 96 ? "cat" : kind < 98 ? "rabbit" : "ferret";
    String sex = dice.permille(500) ? "female" : "male";
    return new Animal(number, chip, dice.pick(NAMES), species, sex, born);
  }
}
