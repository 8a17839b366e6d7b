package withers.demo;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/** Each source's columns, headers and words: no two organisations keep their files alike. */
final class Layouts {

  private static final Map<Source, UnaryOperator<Columns>> ALL = all();

  private Layouts() {}

  static List<Column> of(Source source) {
    return ALL.get(source).apply(new Columns(source)).list();
  }

  private static Map<Source, UnaryOperator<Columns>> all() {
    Map<Source, UnaryOperator<Columns>> all = new EnumMap<>(Source.class);
    all.put(Source.VENDLEMOUTH_PATIENTS, ClinicLayouts::vendlemouth);
    all.put(Source.PELLERWICK_PATIENTS, ClinicLayouts::pellerwick);
    all.put(Source.CORVELSEA_PATIENTS, ClinicLayouts::corvelsea);
    all.put(Source.NETHERSAY_PATIENTS, ClinicLayouts::nethersay);
    all.put(Source.GARROWNESS_STAYS, ShelterLayouts::garrowness);
    all.put(Source.HATHERSAND_MOVEMENTS, ShelterLayouts::hathersand);
    all.put(Source.ULVERSCAR_STAYS, ShelterLayouts::ulverscar);
    all.put(Source.TOLLBARROW_SALES, SellerLayouts::tollbarrow);
    all.put(Source.CORVELSEA_SALES, SellerLayouts::petShop);
    all.put(Source.COAST_REGISTER, RegistryLayouts::coastRegister);
    all.put(Source.NORTHERN_REGISTER, RegistryLayouts::northernRegister);
    all.put(Source.INLAND_ACCOUNT, RegistryLayouts::inlandAccount);
    all.put(Source.BRACKENSAY_REGISTER, RegistryLayouts::brackensayRegister);
    all.put(Source.SKARNHOLME_SUPPLY, SellerLayouts::supply);
    all.put(Source.LOST_AND_FOUND, ReportLayouts::lostAndFound);
    return all;
  }
}
