package chainwright.house;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Executable;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A bare number that others hand in says its unit in its name: {@code cutoffHz}. */
class ParameterNamesTest {

  private static final Pattern UNIT =
      Pattern.compile(
          ".*(Hz|Hertz|Db|Dbfs|Dbtp|Dbu|Lufs|Lu|Decibels|LoudnessUnits|Seconds|Millis|Samples|Frames|Steps|Octaves"
              + "|Radians|Degrees|Share|Percent|Bpm|Metres|Pixels|DbPerOctave)");

  /** Names that are their own unit, a number without one, or a quantity's own factory. */
  private static final Pattern PURE =
      Pattern.compile(
          // Signal values [full scale = 1], and what the formulas of the field are written in.
          "(?i).*(sample|amplitude|ratio|slope|sharpness|steepness|factor|scale|sine|cosine|warp)"
              // Named by their unit alone.
              + "|hz|hertz|decibels|loudnessUnits|decibelsPerOctave|beatsPerMinute|metres|bits|seconds|octaves|radians|degrees|percent|samples|frames|bpm"
              // Coefficients of a transfer function, as every text on filters names them.
              + "|[abdn][0-2]"
              // Pure numbers of one formula each, explained beside it.
              + "|asymmetry|bias|correlation|secondOrder|gain|otherwise|position|share|toOne"
              // Quantities keep one number in the base unit of their kind, and say which.
              + "|value|baseValue"
              // Arguments of plain mathematics.
              + "|x|y|re|im|real|imaginary|angle");

  @Test
  void publicNumber_saysItsUnit() {
    List<String> unclear = new ArrayList<>();
    for (JavaClass type :
        new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("chainwright.quantity", "chainwright.dsp", "chainwright.engine")) {
      if (type.getModifiers().contains(JavaModifier.PUBLIC)) {
        unclear.addAll(unclearIn(type.reflect()));
      }
    }
    assertThat(unclear).isEmpty();
  }

  private static List<String> unclearIn(Class<?> type) {
    Stream<Executable> all =
        Stream.concat(
            Arrays.stream(type.getDeclaredConstructors()),
            Arrays.stream(type.getDeclaredMethods()));
    return all.filter(member -> Modifier.isPublic(member.getModifiers()) && !member.isSynthetic())
        .flatMap(
            member ->
                Arrays.stream(member.getParameters())
                    .filter(ParameterNamesTest::isUnclear)
                    .map(
                        parameter ->
                            type.getSimpleName()
                                + "."
                                + member.getName()
                                + ": "
                                + parameter.getName()))
        .sorted()
        .toList();
  }

  private static boolean isUnclear(Parameter parameter) {
    return parameter.getType() == double.class
        && !UNIT.matcher(parameter.getName()).matches()
        && !PURE.matcher(parameter.getName()).matches();
  }
}
