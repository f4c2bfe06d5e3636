<?xml version="1.0" encoding="UTF-8"?>
<!--
  Reasons: a mask whose bits are listed in reasons.csv. Zero means that nothing rules the cell out and is
  not drawn; anything else is one white veil.

  Ruled-out ground is left as pale as paper (L* 92 or more over any depth), paler than the worst score (L* 82), so that grey print
  and every kind of colour vision tell it from ground that has a score; grey of the same lightness as a middling score could not.
  Depth shading shows faintly through it. The mask is not split by reason here: a cell often has several, and SLD cannot test bits.
  The two upper stops are equal, so the veil is even whether a program interpolates or not. Draw it under the score: some programs
  do not know the opacity of a single stop and would veil the free cells too.
-->
<StyledLayerDescriptor version="1.0.0"
    xmlns="http://www.opengis.net/sld"
    xmlns:ogc="http://www.opengis.net/ogc"
    xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"
    xsi:schemaLocation="http://www.opengis.net/sld http://schemas.opengis.net/sld/1.0.0/StyledLayerDescriptor.xsd">
  <NamedLayer>
    <Name>reasons</Name>
    <UserStyle>
      <Title>Ruled out</Title>
      <FeatureTypeStyle>
        <Rule>
          <RasterSymbolizer>
            <Opacity>0.7</Opacity>
            <ColorMap>
              <ColorMapEntry color="#ffffff" opacity="0" quantity="0" label="free"/>
              <ColorMapEntry color="#ffffff" quantity="1" label="ruled out"/>
              <ColorMapEntry color="#ffffff" quantity="2147483647" label="ruled out"/>
            </ColorMap>
          </RasterSymbolizer>
        </Rule>
      </FeatureTypeStyle>
    </UserStyle>
  </NamedLayer>
</StyledLayerDescriptor>
