package tramontane.airflow.desktop.internal.duty;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

    @Test
    void whatIsDrawnIsDecidedWithoutADisplay() {
        noClasses().that().haveSimpleNameStartingWith("DutyChart").or().haveSimpleNameStartingWith("DutyPresenter")
                .or().haveSimpleNameStartingWith("DutyState").should().dependOnClassesThat().resideInAnyPackage("org.eclipse..")
                .check(new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests())
                        .importPackages("tramontane.airflow.desktop.internal.duty"));
    }

    @Test
    void theAirFlowSolverIsKnownByItsApiAlone() {
        noClasses().should().dependOnClassesThat().resideInAnyPackage("tramontane.airflow.internal..", "tramontane.desktop.internal..")
                .check(new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests())
                        .importPackages("tramontane.airflow.desktop.internal.duty"));
    }
}
